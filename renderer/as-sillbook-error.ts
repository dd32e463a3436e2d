import { SillbookError } from "#shared-lib/errors.ts";

/** What was thrown, as the one error type that screens show. Anything unknown is a defect and becomes `unexpected`. */
export function asSillbookError(reason: unknown): SillbookError {
  return reason instanceof SillbookError ? reason : new SillbookError("unexpected", String(reason));
}
