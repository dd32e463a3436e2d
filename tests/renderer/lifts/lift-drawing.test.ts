import { describe, expect, test } from "vitest";
import type { Bridge, Danger } from "#shared-lib/contract/bridge.ts";
import type { Calculation } from "#shared-lib/contract/calculation.ts";
import type { Landing } from "#shared-lib/contract/lift.ts";
import { bridgeControls, chainContacts } from "#shared-lib/words.ts";
import {
  bridgeAcross,
  chainPictureOf,
  openStripsOf,
} from "../../../renderer/features/bridges/bridge-parts.ts";
import {
  type CheckedPlace,
  concernsOf,
  earlierZoneResult,
  landingStatesOf,
  marksOf,
  newestZoneResult,
  type OpenCallout,
  zoneCentreOf,
} from "../../../renderer/features/lifts/lift-drawing.ts";

const at = "2026-11-24T10:05:00.000Z";
const who = { id: "p", name: "Ines Calder" };
const landings = ["0", "1", "2", "3"].map((marking, i) => ({
  id: `L${marking}`,
  version: 1,
  createdAt: at,
  liftId: "lift",
  marking,
  name: "",
  level: i * 3,
  entrances: "front" as const,
})) satisfies Landing[];

const bridge = (part: Partial<Bridge>): Bridge => ({
  id: "b",
  version: 1,
  createdAt: at,
  liftId: "lift",
  calloutId: null,
  contact: "landing door contact",
  points: "34–35",
  landingId: "L2",
  reason: "contact does not make",
  control: bridgeControls[0],
  leadNumber: "7",
  number: "A-B01",
  liftTitle: "",
  landingMarking: "2",
  setAt: at,
  setBy: who,
  removedAt: null,
  removedBy: null,
  removalNote: "",
  checkedAt: null,
  checkedBy: null,
  proof: "",
  open: true,
  ...part,
});
const danger: Danger = {
  id: "d",
  version: 1,
  createdAt: at,
  liftId: "lift",
  liftTitle: "",
  foundAt: at,
  foundBy: who,
  words: "wire between both",
  clearedAt: null,
  clearedBy: null,
  clearedHow: "",
};
const failed: CheckedPlace = {
  landingId: "L3",
  part: "zone-magnet",
  verdict: "failed",
  sentence: "17 mm low",
  at,
  checkId: "c",
};
const callout: OpenCallout = {
  id: "k",
  number: "A-0609",
  said: "doors keep reopening at 1",
  group: "doors",
  landingId: "L1",
  inside: "nobody",
  peopleInside: false,
};

describe("what needs a person on a lift", () => {
  test("is numbered once for the whole screen: dangers, bridges, failed checks, callouts", () => {
    const strips = openStripsOf({
      bridges: [bridge({}), bridge({ id: "gone", open: false })],
      dangers: [danger],
    });
    const concerns = concernsOf({ landings, strips, places: [failed], callouts: [callout] });
    expect(concerns.map(({ number, kind, place }) => [number, kind, place])).toEqual([
      [1, "danger", { part: "car" }],
      [2, "bridge", { part: "landing-door", landingId: "L2" }],
      [3, "failed", { part: "zone-magnet", landingId: "L3" }],
      [4, "open-fault", { part: "landing-door", landingId: "L1" }],
    ]);
    expect(strips.map((strip) => strip.number)).toEqual([1, 2]);
  });

  test("stands nowhere on the drawing rather than at a wrong place", () => {
    const strips = openStripsOf({
      bridges: [bridge({ landingId: null, landingMarking: null })],
      dangers: [],
    });
    const concerns = concernsOf({
      landings,
      strips,
      places: [],
      callouts: [{ ...callout, landingId: null }],
    });
    expect(concerns.map(({ place }) => place)).toEqual([null, null]);
    expect(marksOf(concerns)).toEqual([]);
  });

  test("marks a bridged final switch at the end that its landing names", () => {
    const placeFor = (landingId: string | null) =>
      concernsOf({
        landings,
        strips: openStripsOf({
          bridges: [bridge({ contact: "final limit switch", landingId })],
          dangers: [],
        }),
        places: [],
        callouts: [],
      })[0]?.place;
    expect(placeFor("L3")).toEqual({ part: "switch", landingId: "L3", switch: "up final" });
    expect(placeFor("L0")).toEqual({ part: "switch", landingId: "L0", switch: "down final" });
    expect(placeFor(null)).toBeNull();
  });

  test("shows people inside at the car, whatever landing was said", () => {
    const concerns = concernsOf({
      landings,
      strips: [],
      places: [],
      callouts: [{ ...callout, inside: "people inside", peopleInside: true }],
    });
    expect(concerns[0]?.place).toEqual({ part: "car" });
  });
});

test("a landing that no check looked at is unchecked", () => {
  expect(landingStatesOf(landings, [failed])).toMatchObject({
    L3: { zoneSignals: "failed", landingPanel: "unchecked" },
    L0: { zoneSignals: "unchecked", landingPanel: "unchecked" },
  });
});

test("the detail takes the newest result of its landing, and the last one that differs as the earlier place", () => {
  const result = (id: string, centre: number, landingId = "L3"): Calculation => ({
    id,
    version: 1,
    createdAt: at,
    calculatorId: "zone-sensors",
    calculatorName: "",
    liftId: "lift",
    landingId,
    visitId: null,
    at,
    by: who,
    inputs: {},
    result: { values: [{ key: "centre", value: centre }] },
    verdictWord: "Outside",
    verdictSentence: "",
  });
  const newestFirst = [result("other", 0.2, "L0"), result("c", -0.017), result("b", -0.017), result("a", 0)];
  expect(zoneCentreOf(newestZoneResult(newestFirst, "L3"))).toBe(-0.017);
  expect(earlierZoneResult(newestFirst, "L3")?.id).toBe("a");
  expect(newestZoneResult(newestFirst, "L1")).toBeNull();
});

describe("the safety chain in a strip", () => {
  test("has the arch over the bridged contact, whichever it is", () => {
    for (const contact of chainContacts) {
      const { contacts, bridgedAt } = chainPictureOf(bridge({ contact }), landings);
      expect(contacts[bridgedAt]).toBeDefined();
    }
  });

  test("parts the landing doors round the bridged one", () => {
    expect(chainPictureOf(bridge({}), landings)).toEqual({
      contacts: ["stops", "governor", "limits", "car door", "0–1", "2", "3"],
      bridgedAt: 5,
    });
  });

  test("says in words where the bridge lies", () => {
    expect(bridgeAcross(bridge({}))).toBe("the landing 2 door contact");
    expect(bridgeAcross(bridge({ contact: "governor contact", landingMarking: null }))).toBe(
      "the governor contact",
    );
  });
});
