import type { SillbookError } from "#shared-lib/errors.ts";
import { readTime } from "#shared-lib/time-words.ts";

/** The sentence that belongs at the field of this path ("points", "fields.arrivedAt"). */
export function fieldProblemOf(error: SillbookError | undefined, path: string): string | undefined {
  return error?.details.fields?.find((field) => field.path.join(".") === path)?.message;
}

export type MomentEntry =
  | { readonly ok: true; readonly at: string | undefined }
  | { readonly ok: false; readonly problem: string };

/** A typed time to send: an empty field is now, which the program itself writes. */
export function readMomentEntry(text: string, now: Date): MomentEntry {
  const reading = readTime(text, now, "past");
  if (reading.kind === "unclear") return { ok: false, problem: reading.problem };
  return { ok: true, at: reading.kind === "moment" ? reading.at : undefined };
}

export function emptyProblem(text: string, sentence: string): string | undefined {
  return text.trim() === "" ? sentence : undefined;
}
