import { expectedEvents } from "#shared-lib/callout-progress.ts";
import type { CalloutLine } from "#shared-lib/contract/callout.ts";
import { type EventKind, eventKinds } from "#shared-lib/words.ts";
import type { MarkKind } from "../../ui/mark.tsx";

/** The mark of an event and of the state that it leaves a callout in. */
export function markOfEvent(kind: EventKind): MarkKind {
  return kind === "back in service" ? "flush" : kind;
}

const stateWords: { readonly [Kind in EventKind]: string } = {
  received: "Received",
  "passed on": "Passed on",
  arrived: "On site",
  "people released": "People released",
  "made safe": "Made safe",
  "back in service": "In service",
  closed: "Closed",
};

type StateFacts = Pick<CalloutLine, "stillInside" | "state">;

/** People are inside until somebody recorded that they are out, after they were reported. */
export function peopleAreInside(line: Pick<CalloutLine, "stillInside">): boolean {
  return line.stillInside;
}

/** What a list says of a callout before anything else, with its mark. */
export function calloutState(line: StateFacts): {
  readonly mark: MarkKind;
  readonly words: string;
  readonly pencil: boolean;
} {
  if (peopleAreInside(line)) return { mark: "person inside", words: "Person inside", pencil: true };
  return { mark: markOfEvent(line.state), words: stateWords[line.state], pencil: false };
}

/** The events a person may record now, in their order: not yet made, and neither the call nor the closing. */
export function recordableEvents(
  line: Pick<CalloutLine, "inside" | "made" | "stillInside">,
): readonly RecordableEvent[] {
  return expectedEvents(line.inside).filter(
    (kind): kind is RecordableEvent =>
      kind !== "received" &&
      kind !== "closed" &&
      (kind === "passed on" ||
        !line.made.includes(kind) ||
        // A release before the report was of others: this one is still to come.
        (kind === "people released" && line.stillInside)),
  );
}
export type RecordableEvent = Exclude<EventKind, "received" | "closed">;

/** The line of ticks: made events stand before the ones to come, even where a step was left out. */
export function progressOf(line: Pick<CalloutLine, "inside" | "made" | "next">): {
  readonly steps: readonly string[];
  readonly made: number;
} {
  const expected = expectedEvents(line.inside);
  const place = line.next === null ? expected.length : expected.indexOf(line.next);
  return { steps: expected.map(shortName), made: place < 0 ? expected.length : place };
}

function shortName(kind: EventKind): string {
  return kind === "back in service" ? "in service" : kind;
}

/** By the minute, then in the order in which events happen: a time typed without seconds never comes before the call. */
export function byTimeThenOrder(
  a: { readonly at: string; readonly kind: EventKind },
  b: { readonly at: string; readonly kind: EventKind },
): number {
  const minutes = a.at.slice(0, 16).localeCompare(b.at.slice(0, 16));
  return minutes !== 0 ? minutes : eventKinds.indexOf(a.kind) - eventKinds.indexOf(b.kind);
}

/** "1 person", "3 people", "People" where nobody counted. */
export function peopleWords(count: number | null): string {
  if (count === null) return "People";
  return count === 1 ? "1 person" : `${count} people`;
}
