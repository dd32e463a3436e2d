import type { ReactNode } from "react";
import { ErrorNote } from "../../ui/error-note.tsx";
import type { ReadState } from "../../use-read.ts";

/** One part of the page: what was read, or why it could not be read. */
export function ReviewPart<Value>(props: {
  readonly read: ReadState<Value>;
  readonly children: (value: Value) => ReactNode;
}) {
  const { value, error, reload } = props.read;
  return (
    <>
      {error !== undefined && <ErrorNote error={error} onRetry={reload} />}
      {value === undefined ? error === undefined && <p className="soft">Counting</p> : props.children(value)}
    </>
  );
}
