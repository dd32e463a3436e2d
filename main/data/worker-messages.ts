import type { Envelope, OperationRequest, ProgramEvent } from "#shared-lib/contract/operation.ts";

/** What is handed to the data worker when it starts. */
export interface WorkerStart {
  readonly folder: string;
  readonly demonstration: boolean;
  readonly programVersion: string;
  /** The built `file-check/check-worker.ts`. */
  readonly checkerPath: string;
}

export type ToWorker =
  | { readonly kind: "request"; readonly call: number; readonly request: OperationRequest }
  | { readonly kind: "close" };

export type FromWorker =
  | { readonly kind: "ready" }
  | { readonly kind: "failed"; readonly failure: Envelope & { ok: false } }
  | { readonly kind: "answer"; readonly call: number; readonly envelope: Envelope }
  | { readonly kind: "event"; readonly event: ProgramEvent }
  | { readonly kind: "closed" };
