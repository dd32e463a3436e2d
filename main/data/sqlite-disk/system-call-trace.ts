/** One change SQLite made on the disk, in order; what a power cut may lose follows from it. */
export type SystemCallRecord =
  | { readonly call: "create"; readonly path: string }
  | { readonly call: "write"; readonly path: string; readonly offset: number; readonly data: Uint8Array }
  | { readonly call: "truncate"; readonly path: string; readonly length: number }
  | { readonly call: "sync"; readonly path: string }
  | { readonly call: "remove"; readonly path: string }
  | { readonly call: "mark"; readonly mark: number };

/** Appended to by the redirected calls when a test (or the self-test) passes one; tests add the marks themselves. */
export type SystemCallTrace = SystemCallRecord[];
