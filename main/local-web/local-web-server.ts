import { createServer, type IncomingMessage, type ServerResponse } from "node:http";
import type { AddressInfo } from "node:net";
import { listen } from "../command-line/ask-door.ts";
import { envelopeOfError, failedEnvelope } from "../command-line/failed-envelope.ts";
import { answerJson, readJsonBody } from "../command-line/json-body.ts";
import { isOperationRequest, requestFormMessage } from "../command-line/operation-request.ts";
import type { DataClient } from "../data/data-client.ts";
import { BrowserSessions } from "./browser-sessions.ts";
import { readBundleFile } from "./bundle-file.ts";
import { fileHeaders } from "./content-security-policy.ts";
import { EventStream } from "./event-stream.ts";
import { OpeningTokens } from "./opening-tokens.ts";
import { isOwnRequest } from "./request-origin.ts";

export interface LocalWebServer {
  /** `http://127.0.0.1:<port>` */
  readonly origin: string;
  /** A fresh address that lets one browser in, once. */
  openingAddress(): string;
  /** Takes no new request, waits for those under way, and ends the event streams. */
  close(): Promise<void>;
}

export interface LocalWebOptions {
  readonly data: Pick<DataClient, "request" | "onEvent">;
  /** Absolute path of the built screens. */
  readonly bundleFolder: string;
  /** 0: any free port. */
  readonly port: number;
  /** For tests of expiry: milliseconds on any steady clock. */
  readonly now?: () => number;
}

/** Serves the program to browsers on this machine. */
export async function startLocalWebServer({
  data,
  bundleFolder,
  port,
  now,
}: LocalWebOptions): Promise<LocalWebServer> {
  const tokens = new OpeningTokens(now);
  const events = new EventStream();
  const server = createServer();
  await listen(server, port);
  const { port: boundPort } = server.address() as AddressInfo;
  const origin = `http://127.0.0.1:${boundPort}`;
  const door = new LocalWebDoor({
    origin,
    tokens,
    events,
    sessions: new BrowserSessions(boundPort),
    data,
    bundleFolder,
  });
  server.on("request", (request, response) => door.answer(request, response));
  const endSubscription = data.onEvent((event) => events.send(event));
  return {
    origin,
    openingAddress: () => `${origin}/open?token=${tokens.issue()}`,
    close: () => {
      endSubscription();
      events.close();
      return new Promise((done) => server.close(() => done()));
    },
  };
}

interface DoorParts {
  readonly origin: string;
  readonly tokens: OpeningTokens;
  readonly sessions: BrowserSessions;
  readonly events: EventStream;
  readonly data: LocalWebOptions["data"];
  readonly bundleFolder: string;
}

/** Decides, for each request, who may have what. */
class LocalWebDoor {
  readonly #parts: DoorParts;

  constructor(parts: DoorParts) {
    this.#parts = parts;
  }

  answer(request: IncomingMessage, response: ServerResponse): void {
    this.#answer(request, response).catch((error: unknown) => {
      if (response.headersSent) response.destroy();
      else answerJson(response, 500, envelopeOfError(error));
    });
  }

  async #answer(request: IncomingMessage, response: ServerResponse): Promise<void> {
    const { origin, sessions, events, bundleFolder } = this.#parts;
    if (!isOwnRequest(request, origin)) return refuse(request, response, 403);
    // Not parsed as a whole address: "//other/path" would be read as another host.
    const [pathname = "/", query = ""] = (request.url ?? "/").split("?", 2);
    if (pathname === "/open") return this.#letIn(request, response, query);
    if (!sessions.knows(request.headers.cookie)) return refuse(request, response, 401);
    if (pathname === "/request") return this.#passOn(request, response);
    if (request.method !== "GET") return refuse(request, response, 405);
    if (pathname === "/events") return events.attach(response);
    const { status, headers, body } = await readBundleFile(bundleFolder, pathname);
    response.writeHead(status, headers);
    response.end(body);
  }

  #letIn(request: IncomingMessage, response: ServerResponse, query: string): void {
    const token = new URLSearchParams(query).get("token") ?? "";
    if (request.method !== "GET" || !this.#parts.tokens.redeem(token)) {
      refuse(request, response, 401);
      return;
    }
    response.writeHead(303, {
      ...fileHeaders("none"),
      "Cache-Control": "no-store",
      "Set-Cookie": this.#parts.sessions.begin(),
      Location: "/",
    });
    response.end();
  }

  async #passOn(request: IncomingMessage, response: ServerResponse): Promise<void> {
    if (request.method !== "POST") return refuse(request, response, 405);
    const body = await readJsonBody(request);
    if (!body.ok) return answerJson(response, body.status, failedEnvelope("input-invalid", body.message));
    if (!isOperationRequest(body.value)) {
      return answerJson(response, 400, failedEnvelope("input-invalid", requestFormMessage));
    }
    const { operation, input, as } = body.value;
    answerJson(response, 200, await this.#parts.data.request({ operation, input, as }));
  }
}

/** A person at the address line gets a sentence, a script an envelope. */
function refuse(request: IncomingMessage, response: ServerResponse, status: 401 | 403 | 405): void {
  request.resume();
  if (request.method === "GET" && (request.headers.accept ?? "").includes("text/html")) {
    response.writeHead(status, { ...fileHeaders("none"), "Content-Type": "text/html; charset=utf-8" });
    response.end(refusalPage);
    return;
  }
  answerJson(response, status, failedEnvelope("access-refused"));
}

const refusalPage = `<!doctype html>
<html lang="en"><meta charset="utf-8"><title>Sillbook: not let in</title>
<h1>This address does not let you in</h1>
<p>An opening address works once and for ten minutes, and a browser that was closed has to be let in again.</p>
<p>Run <code>npm start</code> again: it opens the program that is already running. Nothing is lost.</p>
</html>
`;
