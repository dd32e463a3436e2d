import { type EventKind, eventKinds, type InsideState } from "./words.ts";

/** The events of a callout in the order of its line of ticks; people released only where people were inside. */
export function expectedEvents(inside: InsideState): readonly EventKind[] {
  return inside === "people inside" ? eventKinds : eventKinds.filter((kind) => kind !== "people released");
}

/**
 * What is to be recorded next, or null when the callout is closed. Steps may be left out (an engineer on site was not
 * "passed on" to), but people inside are never passed over.
 */
export function nextEvent(made: readonly EventKind[], inside: InsideState): EventKind | null {
  if (made.includes("closed")) return null;
  const expected = expectedEvents(inside);
  const reached = Math.max(-1, ...made.map((kind) => expected.indexOf(kind)));
  if (
    inside === "people inside" &&
    !made.includes("people released") &&
    reached >= expected.indexOf("arrived")
  ) {
    return "people released";
  }
  return expected.slice(reached + 1).find((kind) => !made.includes(kind)) ?? null;
}

/** The event that tells the state of a callout: the furthest one made. */
export function furthestEvent(made: readonly EventKind[]): EventKind {
  const furthest = Math.max(0, ...made.map((kind) => eventKinds.indexOf(kind)));
  return eventKinds[furthest] ?? "received";
}
