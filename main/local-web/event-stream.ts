import type { ServerResponse } from "node:http";
import type { ProgramEvent } from "#shared-lib/contract/operation.ts";

/** Shorter than any proxy or sleeping network card lets a silent connection live. */
const heartbeatMilliseconds = 15_000;

/** The one event stream to the browsers: server-sent events, each data line one event as JSON. */
export class EventStream {
  readonly #open = new Set<ServerResponse>();
  readonly #heartbeat: NodeJS.Timeout;

  constructor(heartbeatEveryMilliseconds: number = heartbeatMilliseconds) {
    this.#heartbeat = setInterval(() => this.#write(": still here\n\n"), heartbeatEveryMilliseconds);
    this.#heartbeat.unref();
  }

  /** Answers a request with the stream. */
  attach(response: ServerResponse): void {
    response.writeHead(200, {
      "Content-Type": "text/event-stream; charset=utf-8",
      "Cache-Control": "no-store",
      "X-Content-Type-Options": "nosniff",
    });
    response.write("retry: 1000\n\n");
    this.#open.add(response);
    response.on("close", () => this.#open.delete(response));
  }

  send(event: ProgramEvent): void {
    // JSON has no line break outside its strings, and inside them only as \n: one event is one line.
    this.#write(`data: ${JSON.stringify(event)}\n\n`);
  }

  close(): void {
    clearInterval(this.#heartbeat);
    for (const response of this.#open) response.end();
    this.#open.clear();
  }

  #write(text: string): void {
    for (const response of this.#open) response.write(text);
  }
}
