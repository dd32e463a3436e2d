import type { OutputOf } from "#shared-lib/contract/operations.ts";
import type { ResultKind, SearchHit } from "#shared-lib/contract/search.ts";
import { faultGroups, type NoteStatus } from "#shared-lib/words.ts";
import type { MarkKind } from "../../ui/mark.tsx";
import type { TextRange } from "../../ui/marked-text.tsx";
import { countWords, sentenceCase } from "../fault-note/note-words.ts";

/** A lift and a signal check have shapes that claim nothing about their state. */
export type ResultMark = MarkKind | "lift" | "check";

/** One line of the results, whatever it was found by. */
export interface ResultItem {
  /** Stays the same while somebody types, so that the chosen result stays chosen. */
  readonly key: string;
  readonly kind: ResultKind;
  readonly id: string;
  readonly mark: ResultMark;
  /** The mark's word, for a reader. */
  readonly markWord: string;
  readonly title: string;
  readonly titleMarks: readonly TextRange[];
  /** Soft lines below the title. */
  readonly second: string;
  readonly secondMarks: readonly TextRange[];
  readonly why: string;
  readonly number: string | null;
  readonly liftId: string | null;
  readonly calloutId: string | null;
}

export interface ResultGroup {
  readonly key: string;
  readonly title: string;
  readonly total: number;
  readonly items: readonly ResultItem[];
}

const groupTitles: { readonly [Kind in ResultKind]: string } = {
  note: "Fault notes",
  calculator: "Calculators",
  fix: "Recorded fixes",
  callout: "Callouts",
  lift: "Lifts",
  check: "Signal checks",
  visit: "Visits",
};

export const noteMarks: { readonly [Status in NoteStatus]: MarkKind } = {
  draft: "note draft",
  confirmed: "note confirmed",
  withdrawn: "note withdrawn",
};

export function groupsOfAnswer(answer: OutputOf<"search.find">): ResultGroup[] {
  return answer.groups.map(({ kind, total, hits }) => ({
    key: kind,
    title: groupTitles[kind],
    total,
    items: hits.map(itemOfHit),
  }));
}

function itemOfHit(hit: SearchHit): ResultItem {
  const [mark, markWord] = markOfHit(hit);
  return {
    key: `${hit.kind} ${hit.id}`,
    kind: hit.kind,
    id: hit.id,
    mark,
    markWord,
    title: hit.title,
    titleMarks: hit.titleMarks.map(toRange),
    second: hit.second,
    secondMarks: hit.secondMarks.map(toRange),
    why: hit.why,
    number: hit.number,
    liftId: hit.liftId,
    calloutId: hit.calloutId,
  };
}

function toRange([start, end]: readonly [number, number]): TextRange {
  return { start, end };
}

function markOfHit({ kind, status }: SearchHit): readonly [ResultMark, string] {
  switch (kind) {
    case "note":
      return [noteMarks[(status ?? "draft") as NoteStatus], `${status ?? "draft"} fault note`];
    case "calculator":
      return ["calculator", "calculator"];
    case "fix":
      return ["recorded fix", "recorded fix"];
    case "callout":
      return markOfCallout(status);
    case "lift":
      return ["lift", "lift"];
    case "check":
      return ["check", "signal check"];
    case "visit":
      return ["arrived", "visit"];
  }
}

function markOfCallout(status: string | null): readonly [ResultMark, string] {
  if (status === "open") return ["received", "open callout"];
  if (status === "left out of service") return ["stepped", "callout, left out of service"];
  return ["closed", "closed callout"];
}

type NoteLine = OutputOf<"faultNote.list">["notes"][number];

/** All fault notes under their fault groups, in the order of the trade's list; a group with none is left out. */
export function groupsOfNotes(notes: readonly NoteLine[]): ResultGroup[] {
  return faultGroups
    .map((group) => {
      const items = notes.filter((note) => note.group === group).map(itemOfNote);
      return { key: group, title: sentenceCase(group), total: items.length, items };
    })
    .filter(({ total }) => total > 0);
}

function itemOfNote(note: NoteLine): ResultItem {
  return {
    key: `note ${note.id}`,
    kind: "note",
    id: note.id,
    mark: noteMarks[note.status],
    markWord: `${note.status} fault note`,
    title: note.title,
    titleMarks: [],
    second: "",
    secondMarks: [],
    why: [
      note.starter && note.status === "draft" ? "starter note" : note.status,
      note.callouts > 0 ? `${countWords(note.callouts, "callout")} on ${countWords(note.lifts, "lift")}` : "",
    ]
      .filter((words) => words !== "")
      .join("; "),
    number: note.number,
    liftId: null,
    calloutId: null,
  };
}

/** At most `most` lines of each group that was not opened. */
export function foldGroups(
  groups: readonly ResultGroup[],
  opened: ReadonlySet<string>,
  most: number,
): ResultGroup[] {
  return groups.map((group) =>
    opened.has(group.key) || group.items.length <= most
      ? group
      : { ...group, items: group.items.slice(0, most) },
  );
}

/** The line the arrow key leads to; the first and the last one are next to each other nowhere. */
export function stepThrough(
  groups: readonly ResultGroup[],
  currentKey: string | null,
  step: 1 | -1,
): string | null {
  const items = groups.flatMap((group) => group.items);
  if (items.length === 0) return null;
  const at = items.findIndex((item) => item.key === currentKey);
  if (at === -1) return items[0]?.key ?? null;
  return items[Math.min(items.length - 1, Math.max(0, at + step))]?.key ?? null;
}
