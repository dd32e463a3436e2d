import type { IncomingMessage, ServerResponse } from "node:http";

/** 5 MB: far above any record a person types, far below what would strain the program. */
export const bodyLimitBytes = 5 * 1024 * 1024;

export type JsonBody =
  | { readonly ok: true; readonly value: unknown }
  | { readonly ok: false; readonly status: 400 | 413 | 415; readonly message: string };

/** Reads a JSON request body of at most `limitBytes`. */
export async function readJsonBody(request: IncomingMessage, limitBytes = bodyLimitBytes): Promise<JsonBody> {
  // A form of another page can send text/plain without asking first; JSON it cannot.
  if (!/^application\/json\s*(;|$)/i.test(request.headers["content-type"] ?? "")) {
    request.resume();
    return { ok: false, status: 415, message: "The request must be sent as application/json." };
  }
  const chunks: Buffer[] = [];
  let bytes = 0;
  // What is too large is still read to its end and thrown away: an answer to half a request would never arrive.
  for await (const chunk of request as AsyncIterable<Buffer>) {
    bytes += chunk.length;
    if (bytes <= limitBytes) chunks.push(chunk);
    else chunks.length = 0;
  }
  if (bytes > limitBytes) {
    const message = `The request is larger than ${limitBytes / (1024 * 1024)} MB. Nothing was changed; send less at once.`;
    return { ok: false, status: 413, message };
  }
  try {
    return { ok: true, value: JSON.parse(Buffer.concat(chunks).toString("utf8")) };
  } catch {
    return { ok: false, status: 400, message: "The request is not valid JSON. Nothing was changed." };
  }
}

export function answerJson(response: ServerResponse, status: number, value: unknown): void {
  const body = Buffer.from(JSON.stringify(value));
  response.writeHead(status, {
    "Content-Type": "application/json; charset=utf-8",
    "Content-Length": body.length,
    "Cache-Control": "no-store",
    "X-Content-Type-Options": "nosniff",
  });
  response.end(body);
}
