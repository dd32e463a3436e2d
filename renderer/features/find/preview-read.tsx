import type { ReactNode } from "react";
import { ErrorNote } from "../../ui/error-note.tsx";
import type { ReadState } from "../../use-read.ts";

interface PreviewReadProps<Value> {
  readonly read: ReadState<Value>;
  readonly children: (value: Value) => ReactNode;
}

/** What was read, or why it could not be. Nothing flickers while it is on its way: that takes milliseconds. */
export function PreviewRead<Value>({ read, children }: PreviewReadProps<Value>) {
  if (read.value !== undefined) return children(read.value);
  if (read.error !== undefined) return <ErrorNote error={read.error} onRetry={read.reload} />;
  return null;
}
