import type { SillbookError } from "#shared-lib/errors.ts";

/** The sentence that belongs at the field of this path ("at", "fields.arrivedAt"). */
export function fieldProblem(error: SillbookError | undefined, path: string): string | undefined {
  return error?.details.fields?.find((field) => field.path.join(".") === path)?.message;
}
