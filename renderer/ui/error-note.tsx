import type { SillbookError } from "#shared-lib/errors.ts";
import { Button } from "./button.tsx";
import { MarkShape } from "./mark.tsx";

interface ErrorNoteProps {
  readonly error: SillbookError | undefined;
  /** Words of a field by its path ("events.0.at"), so that nobody reads a raw name. */
  readonly fieldWords?: (path: string) => string | undefined;
  readonly onRetry?: () => void;
  readonly retryWord?: string;
}

/** Says what happened and what to do. The page below stays as it is. */
export function ErrorNote({ error, fieldWords, onRetry, retryWord = "Try again" }: ErrorNoteProps) {
  if (error === undefined) return null;
  const fields = error.details.fields ?? [];
  return (
    <div className="error-note" role="alert">
      <p className="error-says">
        <MarkShape kind="stepped" />
        <span>{error.message}</span>
      </p>
      {fields.length > 0 && (
        <ul>
          {fields.map((field) => {
            const path = field.path.join(".");
            const words = fieldWords?.(path);
            return (
              <li key={`${path} ${field.message}`}>
                {words !== undefined && <b>{words}: </b>}
                {field.message}
              </li>
            );
          })}
        </ul>
      )}
      {onRetry !== undefined && <Button onPress={onRetry}>{retryWord}</Button>}
    </div>
  );
}
