import { request as httpRequest } from "node:http";
import type { Envelope, OperationRequest } from "#shared-lib/contract/operation.ts";
import { readRunning } from "../data/data-folder.ts";
import type { Shown } from "./ask-door.ts";

/** The program that has a data folder open, as another process sees it. */
export interface RunningProgram {
  request(request: OperationRequest): Promise<Envelope>;
  show(): Promise<Shown>;
}

interface Answer {
  readonly status: number;
  readonly body: string;
}

/**
 * The program running on a data folder, or undefined where none answers: the file it left is no proof, as a program
 * that was killed leaves it behind.
 */
export async function findRunningProgram(folder: string): Promise<RunningProgram | undefined> {
  const running = readRunning(folder);
  if (!running) return undefined;
  const { address, key } = running;
  // An unknown path with the right key is answered 404; a stranger on a reused port does not know the key.
  const greeting = await post(address, key, "/", {}).catch(() => undefined);
  if (greeting?.status !== 404 || !isEnvelope(greeting.body)) return undefined;
  return {
    request: async (request) => JSON.parse((await post(address, key, "/request", request)).body) as Envelope,
    show: async () => (JSON.parse((await post(address, key, "/show", {})).body) as { value: Shown }).value,
  };
}

function isEnvelope(body: string): boolean {
  try {
    return typeof (JSON.parse(body) as { ok?: unknown }).ok === "boolean";
  } catch {
    return false;
  }
}

function post(address: string, key: string, path: string, value: unknown): Promise<Answer> {
  const body = Buffer.from(JSON.stringify(value));
  return new Promise((done, fail) => {
    const outgoing = httpRequest(
      new URL(path, address),
      {
        method: "POST",
        headers: {
          Authorization: `Bearer ${key}`,
          "Content-Type": "application/json",
          "Content-Length": body.length,
        },
      },
      (incoming) => {
        const chunks: Buffer[] = [];
        incoming.on("data", (chunk: Buffer) => chunks.push(chunk));
        incoming.on("error", fail);
        incoming.on("end", () =>
          done({ status: incoming.statusCode ?? 0, body: Buffer.concat(chunks).toString("utf8") }),
        );
      },
    );
    outgoing.on("error", fail);
    outgoing.end(body);
  });
}
