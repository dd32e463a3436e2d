import type { RecordedFix } from "#shared-lib/contract/visit.ts";
import { emptyForm, type NoteForm } from "./note-form.ts";

const longestLine = 300;

/** A new note begun from the words somebody searched with: they are its first symptom. */
export function startFromWords(words: string): NoteForm {
  const said = words.trim();
  return said === "" ? emptyForm : { ...emptyForm, symptoms: [{ key: "line 0", words: said }] };
}

/**
 * A new note begun from a recorded fix: what the caller said is its first symptom, what ended it its first cause. A
 * cause longer than a line gives the line to the title and stands whole in how to tell.
 */
export function startFromFix(
  fix: Pick<RecordedFix, "cause" | "fix" | "group">,
  said: string | null,
): NoteForm {
  const cause = fix.cause.replace(/\s+/g, " ").trim();
  const fitsLine = cause.length <= longestLine;
  return {
    ...emptyForm,
    title: fitsLine ? cause : "",
    group: fix.group,
    symptoms: said === null || said.trim() === "" ? [] : [{ key: "line 0", words: said.trim() }],
    causes: [
      {
        key: "recorded-fix",
        title: fitsLine ? cause : "",
        tell: fitsLine ? "" : fix.cause,
        fix: fix.fix,
        caution: "",
        source: "",
      },
    ],
  };
}
