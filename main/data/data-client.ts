import { Worker } from "node:worker_threads";
import type { Envelope, OperationRequest, ProgramEvent } from "#shared-lib/contract/operation.ts";
import { SillbookError } from "#shared-lib/errors.ts";
import packageFacts from "../../package.json" with { type: "json" };
import checkerPath from "./file-check/check-worker?modulePath";
import workerPath from "./worker?modulePath";
import type { FromWorker, ToWorker, WorkerStart } from "./worker-messages.ts";

export interface DataClient {
  readonly folder: string;
  request(request: OperationRequest): Promise<Envelope>;
  onEvent(listener: (event: ProgramEvent) => void): () => void;
  close(): Promise<void>;
}

export interface OpenDataClientOptions {
  readonly folder: string;
  readonly demonstration?: boolean;
}

function stopped(): Envelope {
  const error = new SillbookError(
    "shell-unreachable",
    "The data worker has stopped. Start the program again; what was acknowledged is on the disk.",
  );
  return { ok: false, error: { code: error.code, message: error.message, details: {} } };
}

/** The worker as seen from its door: what waits for an answer, who listens, whether it still lives. */
class WorkerLine {
  readonly #worker: Worker;
  readonly #waiting = new Map<number, (envelope: Envelope) => void>();
  readonly listeners = new Set<(event: ProgramEvent) => void>();
  readonly ended: Promise<void>;
  #nextCall = 1;
  #alive = true;

  constructor(worker: Worker) {
    this.#worker = worker;
    this.ended = new Promise((resolve) => {
      worker.once("exit", () => {
        this.#alive = false;
        for (const answer of this.#waiting.values()) answer(stopped());
        this.#waiting.clear();
        resolve();
      });
    });
  }

  /** Resolves when the folder is open; rejects with the reason why it is not. */
  started(): Promise<void> {
    return new Promise((resolve, reject) => {
      this.#worker.once("error", reject);
      this.#worker.once("exit", () =>
        reject(new SillbookError("unexpected", "The data worker stopped while starting.")),
      );
      this.#worker.on("message", (message: FromWorker) => {
        if (message.kind === "ready") resolve();
        else if (message.kind === "failed") {
          const { code, message: words, details } = message.failure.error;
          reject(new SillbookError(code, words, details));
        } else this.#receive(message);
      });
    });
  }

  request(request: OperationRequest): Promise<Envelope> {
    if (!this.#alive) return Promise.resolve(stopped());
    const call = this.#nextCall++;
    return new Promise((resolve) => {
      this.#waiting.set(call, resolve);
      this.#send({ kind: "request", call, request });
    });
  }

  async close(): Promise<void> {
    if (this.#alive) this.#send({ kind: "close" });
    await this.ended;
  }

  #send(message: ToWorker): void {
    this.#worker.postMessage(message);
  }

  #receive(message: FromWorker): void {
    if (message.kind === "answer") {
      this.#waiting.get(message.call)?.(message.envelope);
      this.#waiting.delete(message.call);
    } else if (message.kind === "event") {
      for (const listener of this.listeners) listener(message.event);
    }
  }
}

/**
 * Starts the data worker on a folder.
 * @throws SillbookError folder-in-use, folder-not-empty, store-damaged, store-foreign, store-newer, disk-full, disk-denied, disk-failed
 */
export async function openDataClient(options: OpenDataClientOptions): Promise<DataClient> {
  const start: WorkerStart = {
    folder: options.folder,
    demonstration: options.demonstration ?? false,
    programVersion: packageFacts.version,
    checkerPath,
  };
  const line = new WorkerLine(new Worker(workerPath, { workerData: start }));
  await line.started();
  return {
    folder: options.folder,
    request: (request) => line.request(request),
    onEvent(listener) {
      line.listeners.add(listener);
      return () => line.listeners.delete(listener);
    },
    close: () => line.close(),
  };
}
