import { Worker } from "node:worker_threads";
import type { Envelope } from "#shared-lib/contract/operation.ts";
import { SillbookError } from "#shared-lib/errors.ts";
import type { FileCheck, FileChecker } from "./check-file.ts";

/** What the thread says at its end. */
export type FileChecked = { readonly check: FileCheck } | { readonly failure: Envelope & { ok: false } };

/**
 * Checks files in a thread of their own, with a database engine of its own: a large file takes seconds, in which requests
 * are answered and after which the memory is given back. Nothing may write to the file meanwhile.
 * @param workerPath the built `check-worker.ts`
 */
export function checkerInThread(workerPath: string): FileChecker {
  return (file, signal) =>
    new Promise((resolve, reject) => {
      const worker = new Worker(workerPath, { workerData: file });
      const end = (): void => {
        void worker.terminate();
      };
      signal?.addEventListener("abort", end, { once: true });
      if (signal?.aborted) end();
      worker.once("message", (said: FileChecked) => {
        if ("check" in said) resolve(said.check);
        else reject(asError(said.failure));
      });
      worker.once("error", reject);
      worker.once("exit", () => {
        signal?.removeEventListener("abort", end);
        reject(new SillbookError("unexpected", `The check of ${file} was ended before it was done.`));
      });
    });
}

function asError({ error }: Envelope & { ok: false }): SillbookError {
  return new SillbookError(error.code, error.message, error.details);
}
