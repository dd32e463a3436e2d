import type { OperationRequest } from "#shared-lib/contract/operation.ts";

/** The one channel on which the page asks. The architecture allows this and the event channel, and no other. */
export const requestChannel = "sillbook:request";

/** The one channel on which main reports what changed. */
export const eventChannel = "sillbook:event";

/** Everything the page can ask of the desktop. */
export type ShellCall =
  | { readonly call: "request"; readonly request: OperationRequest }
  | { readonly call: "open-external"; readonly address: string }
  | { readonly call: "print" };
