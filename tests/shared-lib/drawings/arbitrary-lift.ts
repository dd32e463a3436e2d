import fc from "fast-check";
import type {
  ShaftLanding,
  ShaftMark,
  ShaftPart,
  ShaftSectionLift,
} from "#shared-lib/drawings/shaft-section.ts";

const words = fc.string({ maxLength: 18 });
const metres = (min: number, max: number) => fc.double({ min, max, noNaN: true });
const perhaps = <T>(arbitrary: fc.Arbitrary<T>) => fc.option(arbitrary, { nil: null });

/** Levels as people enter them: in any order, some twice, some far apart. */
const levels = fc.oneof(
  fc.array(metres(-20, 200), { minLength: 1, maxLength: 12 }),
  fc.array(
    fc.integer({ min: -3, max: 20 }).map((storey) => storey * 2.8),
    { minLength: 1, maxLength: 40 },
  ),
  fc.integer({ min: 1, max: 64 }).map((count) => Array.from({ length: count }, (_, index) => index * 3)),
  fc.constant([0]),
  fc.constant([4.2, 4.2]),
);

export const arbitraryLandings: fc.Arbitrary<ShaftLanding[]> = levels.chain((given) =>
  fc.tuple(
    ...given.map((levelMetres, index) =>
      fc.record({
        id: fc.constant(`landing ${index}`),
        marking: fc.constant(String(index)),
        name: words,
        levelMetres: fc.constant(levelMetres),
        entrances: fc.constantFrom("front" as const, "rear" as const, "both" as const),
      }),
    ),
  ),
);

export const arbitraryLift: fc.Arbitrary<ShaftSectionLift> = fc.record({
  landings: arbitraryLandings,
  driveKind: fc.constantFrom("geared traction", "gearless traction", "machine-room-less", "hydraulic"),
  roping: fc.constantFrom("1:1", "2:1", null),
  pitDepthMetres: perhaps(metres(0.3, 4)),
  headroomMetres: perhaps(metres(0, 6)),
  magnetLengthMetres: perhaps(metres(0.05, 0.7)),
  sensorSpacingMetres: perhaps(metres(0, 0.4)),
  zoneSensors: fc.constantFrom(1, 2, null),
  upSlowdownMetres: perhaps(metres(0.1, 6)),
  downSlowdownMetres: perhaps(metres(0.1, 6)),
  upFinalMetres: perhaps(metres(0.02, 0.4)),
  downFinalMetres: perhaps(metres(0.02, 0.4)),
});

const parts: readonly ShaftPart[] = [
  "zone-magnet",
  "landing-door",
  "landing-panel",
  "switch",
  "car",
  "pit",
  "machine",
];

export function arbitraryMarks(lift: ShaftSectionLift): fc.Arbitrary<ShaftMark[]> {
  const mark = fc.record({
    id: fc.uuid(),
    kind: fc.constantFrom("failed" as const, "open-fault" as const, "bridge" as const, "danger" as const),
    place: fc.record({
      part: fc.constantFrom(...parts),
      landingId: fc.constantFrom(...lift.landings.map((landing) => landing.id)),
      switch: fc.constantFrom("up final" as const, "down slowdown" as const),
    }),
    number: fc.integer({ min: 1, max: 99 }),
    words,
  });
  return fc.array(mark, { maxLength: 5 });
}

/** The lift of the sketches: eight landings, machine-room-less, roped 2:1. */
export const eightLandings: ShaftSectionLift = {
  landings: [0, 3.2, 6, 8.8, 11.6, 14.4, 17.2, 20].map((levelMetres, index) => ({
    id: `landing ${index}`,
    marking: String(index),
    name: ["Lobby", "First", "Second", "Third", "Fourth", "Fifth", "Sixth", "Terrace"][index] ?? "",
    levelMetres,
    entrances: "front",
  })),
  driveKind: "machine-room-less",
  roping: "2:1",
  pitDepthMetres: 1.3,
  headroomMetres: 3.6,
  magnetLengthMetres: 0.3,
  sensorSpacingMetres: 0.06,
  zoneSensors: 2,
  upSlowdownMetres: 1.3,
  downSlowdownMetres: 1.3,
  upFinalMetres: 0.12,
  downFinalMetres: 0.12,
};
