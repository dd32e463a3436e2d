import type { FaultNote, FaultNoteFields } from "#shared-lib/contract/fault-note.ts";
import type { OutputOf } from "#shared-lib/contract/operations.ts";
import { formatDate } from "#shared-lib/format.ts";

export type FoundNote = OutputOf<"faultNote.find">;

export const starterWords = "Starter note: general practice, check on site.";

/** "Confirmed by Hedda Quill, 3 Mar 2026: seen on four lifts"; null for a draft that nobody set back. */
export function statusSentence(note: FaultNote): string | null {
  if (note.statusAt === null) return null;
  const by = note.statusBy === null ? "" : ` by ${note.statusBy.name}`;
  const verb = { draft: "Set back to draft", confirmed: "Confirmed", withdrawn: "Withdrawn" }[note.status];
  const why = note.statusReason === "" ? "." : `: ${note.statusReason}`;
  return `${verb}${by}, ${formatDate(note.statusAt)}${why}`;
}

export function proofWords({ callouts, lifts, proof }: FoundNote): string {
  if (callouts > 0) return `${countWords(callouts, "callout")} on ${countWords(lifts, "lift")}`;
  return proof.length > 0 ? `${countWords(proof.length, "fix", "fixes")} outside callouts` : "no callout yet";
}

export function countWords(count: number, one: string, many = `${one}s`): string {
  return `${count} ${count === 1 ? one : many}`;
}

export function sentenceCase(words: string): string {
  return words.charAt(0).toUpperCase() + words.slice(1);
}

/** Where a note applies, in words; empty where it applies everywhere. */
export function appliesWords({ applies }: Pick<FaultNoteFields, "applies">): string {
  return [
    applies.drives.join(", "),
    applies.doors.map((door) => `${door} doors`).join(", "),
    applies.controllerFamilies.map((family) => `controller family ${family}`).join(", "),
    applies.words,
  ]
    .filter((part) => part !== "")
    .join("; ");
}

export function listWords(items: readonly (number | string)[]): string {
  if (items.length < 2) return items.join("");
  return `${items.slice(0, -1).join(", ")} and ${items.at(-1)}`;
}

export const meaningWords = {
  excludes: "rules out",
  unlikely: "makes unlikely",
  neutral: "says nothing of",
  likely: "makes likely",
  proves: "proves",
} as const;
export type Meaning = keyof typeof meaningWords;
