import { createHash, randomBytes, timingSafeEqual } from "node:crypto";
import { createServer, type IncomingMessage, type Server, type ServerResponse } from "node:http";
import type { AddressInfo } from "node:net";
import type { Envelope, OperationRequest } from "#shared-lib/contract/operation.ts";
import { envelopeOfError, failedEnvelope } from "./failed-envelope.ts";
import { answerJson, readJsonBody } from "./json-body.ts";
import { isOperationRequest, requestFormMessage } from "./operation-request.ts";

/** Where the running program was shown when it was started a second time. */
export type Shown = { readonly in: "window" } | { readonly in: "browser"; readonly address: string };

export interface AskDoor {
  /** `http://127.0.0.1:<port>` */
  readonly address: string;
  /** 256 random bits in hexadecimal. */
  readonly key: string;
  /** Takes no new request and waits for those under way. */
  close(): Promise<void>;
}

export interface AskDoorOptions {
  request(request: OperationRequest): Promise<Envelope>;
  /** Brings the window to the front, or makes a fresh address for the browser. */
  show(): Promise<Shown>;
}

/**
 * The listener through which `ask`, and a second start, reach the program that holds a data folder. Loopback only; the
 * key lies in a file that only this user can read, and no page in a browser can send it.
 */
export async function openAskDoor(options: AskDoorOptions): Promise<AskDoor> {
  const key = randomBytes(32).toString("hex");
  const server = createServer((request, response) => {
    answer(request, response, key, options).catch((error: unknown) =>
      answerJson(response, 500, envelopeOfError(error)),
    );
  });
  await listen(server, 0);
  const { port } = server.address() as AddressInfo;
  return {
    address: `http://127.0.0.1:${port}`,
    key,
    close: () => new Promise((done) => server.close(() => done())),
  };
}

/** Listens on the loopback address only. Port 0: any free one. */
export function listen(server: Server, port: number): Promise<void> {
  return new Promise((done, fail) => {
    server.once("error", fail);
    server.listen(port, "127.0.0.1", () => {
      server.off("error", fail);
      done();
    });
  });
}

async function answer(
  request: IncomingMessage,
  response: ServerResponse,
  key: string,
  options: AskDoorOptions,
): Promise<void> {
  if (!hasKey(request, key)) return refuse(response, 401);
  if (request.method !== "POST") return refuse(response, 405);
  if (request.url === "/show") return answerJson(response, 200, { ok: true, value: await options.show() });
  if (request.url !== "/request") return refuse(response, 404);
  const body = await readJsonBody(request);
  if (!body.ok) return answerJson(response, body.status, failedEnvelope("input-invalid", body.message));
  if (!isOperationRequest(body.value)) {
    return answerJson(response, 400, failedEnvelope("input-invalid", requestFormMessage));
  }
  answerJson(response, 200, await options.request(body.value));
}

function refuse(response: ServerResponse, status: number): void {
  answerJson(response, status, failedEnvelope("access-refused"));
}

function hasKey(request: IncomingMessage, key: string): boolean {
  const given = request.headers.authorization ?? "";
  // Hashed first: the comparison takes the same time whatever was given, its length included.
  return timingSafeEqual(digest(given), digest(`Bearer ${key}`));
}

function digest(text: string): Buffer {
  return createHash("sha256").update(text).digest();
}
