import { expect, test } from "vitest";
import {
  byTimeThenOrder,
  calloutState,
  peopleAreInside,
  peopleWords,
  progressOf,
  recordableEvents,
} from "../../../renderer/features/callout/event-parts.ts";

test("a person inside is said before everything else, until people released is recorded", () => {
  const inside = { stillInside: true, state: "arrived" } as const;
  expect(calloutState(inside)).toEqual({
    mark: "person inside",
    words: "Person inside",
    pencil: true,
  });
  expect(peopleAreInside(inside)).toBe(true);
  const released = { stillInside: false, state: "people released" } as const;
  expect(peopleAreInside(released)).toBe(false);
  expect(calloutState(released).words).toBe("People released");
});

test("back in service stands as flush sills and reads in service", () => {
  expect(calloutState({ stillInside: false, state: "back in service" })).toMatchObject({
    mark: "flush",
    words: "In service",
  });
});

test("what can be recorded: never the call or the closing, passing on again and again", () => {
  expect(recordableEvents({ inside: "nobody", made: ["received", "passed on"], stillInside: false })).toEqual(
    ["passed on", "arrived", "made safe", "back in service"],
  );
  const inside = { inside: "people inside", stillInside: true } as const;
  const still = ["passed on", "people released", "made safe", "back in service"];
  expect(recordableEvents({ ...inside, made: ["received", "arrived"] })).toEqual(still);
  // Others were released before these were reported.
  expect(recordableEvents({ ...inside, made: ["received", "arrived", "people released"] })).toEqual(still);
  const released = { ...inside, stillInside: false };
  expect(recordableEvents({ ...released, made: ["received", "arrived", "people released"] })).toEqual([
    "passed on",
    "made safe",
    "back in service",
  ]);
});

test("the line of ticks has six steps, seven with people inside, and the next is the first not made", () => {
  expect(progressOf({ inside: "nobody", made: ["received"], next: "passed on" })).toEqual({
    steps: ["received", "passed on", "arrived", "made safe", "in service", "closed"],
    made: 1,
  });
  const inside = progressOf({
    inside: "people inside",
    made: ["received", "arrived"],
    next: "people released",
  });
  expect(inside.steps).toHaveLength(7);
  expect(inside.steps[inside.made]).toBe("people released");
  expect(progressOf({ inside: "nobody", made: ["received", "closed"], next: null }).made).toBe(6);
});

test("an event typed without seconds never stands before the call of the same minute", () => {
  const events = [
    { at: "2026-11-17T08:52:00.000Z", kind: "passed on" as const },
    { at: "2026-11-17T08:52:30.000Z", kind: "received" as const },
    { at: "2026-11-17T08:51:59.000Z", kind: "closed" as const },
  ];
  expect([...events].sort(byTimeThenOrder).map(({ kind }) => kind)).toEqual([
    "closed",
    "received",
    "passed on",
  ]);
});

test("people are counted in words", () => {
  expect([peopleWords(1), peopleWords(3), peopleWords(null)]).toEqual(["1 person", "3 people", "People"]);
});
