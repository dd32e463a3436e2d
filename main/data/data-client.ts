import { Worker } from "node:worker_threads";
import type { Envelope, OperationRequest, ProgramEvent } from "#shared-lib/contract/operation.ts";
import { SillbookError } from "#shared-lib/errors.ts";
import packageFacts from "../../package.json" with { type: "json" };
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

/**
 * Starts the data worker on a folder.
 * @throws SillbookError folder-in-use, folder-not-empty, store-damaged, store-foreign, store-newer, disk-full, disk-denied, disk-failed
 */
export async function openDataClient(options: OpenDataClientOptions): Promise<DataClient> {
  const start: WorkerStart = {
    folder: options.folder,
    demonstration: options.demonstration ?? false,
    programVersion: packageFacts.version,
  };
  const worker = new Worker(workerPath, { workerData: start });
  const waiting = new Map<number, (envelope: Envelope) => void>();
  const listeners = new Set<(event: ProgramEvent) => void>();
  let nextCall = 1;
  let alive = true;
  const send = (message: ToWorker): void => worker.postMessage(message);

  const ended = new Promise<void>((resolve) => {
    worker.once("exit", () => {
      alive = false;
      for (const answer of waiting.values()) answer(stopped());
      waiting.clear();
      resolve();
    });
  });

  await new Promise<void>((resolve, reject) => {
    worker.once("error", reject);
    worker.once("exit", () =>
      reject(new SillbookError("unexpected", "The data worker stopped while starting.")),
    );
    worker.on("message", (message: FromWorker) => {
      if (message.kind === "ready") resolve();
      else if (message.kind === "failed") {
        const { code, message: words, details } = message.failure.error;
        reject(new SillbookError(code, words, details));
      } else if (message.kind === "answer") {
        waiting.get(message.call)?.(message.envelope);
        waiting.delete(message.call);
      } else if (message.kind === "event") {
        for (const listener of listeners) listener(message.event);
      }
    });
  });

  return {
    folder: options.folder,
    request(request) {
      if (!alive) return Promise.resolve(stopped());
      const call = nextCall++;
      return new Promise((resolve) => {
        waiting.set(call, resolve);
        send({ kind: "request", call, request });
      });
    },
    onEvent(listener) {
      listeners.add(listener);
      return () => listeners.delete(listener);
    },
    async close() {
      if (alive) send({ kind: "close" });
      await ended;
    },
  };
}
