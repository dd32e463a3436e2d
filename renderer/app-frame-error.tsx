import type { ErrorComponentProps } from "@tanstack/react-router";
import { SillbookError } from "#shared-lib/errors.ts";
import { ErrorNote } from "./ui/error-note.tsx";

/** A screen that broke: what is typed is kept as a draft, and the other screens still work. */
export function ScreenError({ error, reset }: ErrorComponentProps) {
  const shown =
    error instanceof SillbookError
      ? error
      : new SillbookError(
          "unexpected",
          `This screen could not be shown. ${error instanceof Error ? error.message : String(error)}`,
        );
  return (
    <div className="stack">
      <h1>This screen could not be shown</h1>
      <ErrorNote error={shown} onRetry={reset} retryWord="Show it again" />
    </div>
  );
}
