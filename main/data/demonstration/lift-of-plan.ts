import type { InputOf } from "#shared-lib/contract/operations.ts";
import type { LiftPlan } from "./demonstration-company.ts";
import type { SeededRandom } from "./seeded-random.ts";

type LiftInput = InputOf<"lift.add">;

const ordinals = [
  "Lobby",
  "First",
  "Second",
  "Third",
  "Fourth",
  "Fifth",
  "Sixth",
  "Seventh",
  "Eighth",
  "Ninth",
  "Tenth",
  "Eleventh",
  "Twelfth",
  "Thirteenth",
];

const byType: Readonly<Record<LiftPlan["type"], Partial<LiftInput>>> = {
  gearless: {
    driveKind: "gearless traction",
    roping: "1:1",
    ratedLoad: 1600,
    ratedSpeed: 1.6,
    sheaveDiameter: 0.48,
    encoderPulses: 2048,
    doorKind: "centre-opening",
    doorWidth: 1.1,
    pitDepth: 1.6,
    headroom: 4.2,
    upSlowdownDistance: 2.6,
    downSlowdownDistance: 2.6,
  },
  geared: {
    driveKind: "geared traction",
    roping: "1:1",
    ratedLoad: 630,
    ratedSpeed: 1,
    sheaveDiameter: 0.52,
    encoderPulses: 1024,
    doorKind: "centre-opening",
    doorWidth: 0.9,
    pitDepth: 1.4,
    headroom: 3.7,
    upSlowdownDistance: 1.35,
    downSlowdownDistance: 1.35,
  },
  "machine-room-less": {
    driveKind: "machine-room-less",
    roping: "2:1",
    ratedLoad: 630,
    ratedSpeed: 1,
    sheaveDiameter: 0.32,
    encoderPulses: 2048,
    doorKind: "side-opening",
    doorWidth: 0.9,
    pitDepth: 1.3,
    headroom: 3.6,
    upSlowdownDistance: 1.3,
    downSlowdownDistance: 1.3,
  },
  hydraulic: {
    driveKind: "hydraulic",
    roping: null,
    ratedLoad: 1000,
    ratedSpeed: 0.5,
    doorKind: "side-opening",
    doorWidth: 1,
    pitDepth: 1.2,
    headroom: 3.4,
    upSlowdownDistance: 0.6,
    downSlowdownDistance: 0.6,
  },
};

/** Everything recorded about a demonstration lift, from its type and a little chance. */
export function liftOfPlan(plan: LiftPlan, siteId: string, random: SeededRandom): LiftInput {
  const year = random.integer(1994, 2022);
  const modernised = year < 2008 && random.chance(0.6) ? random.integer(2015, 2024) : null;
  const spacing = random.pick([0.06, 0.08, 0.05]);
  return {
    ...byType[plan.type],
    siteId,
    name: plan.name,
    plateNumber: `ML ${random.integer(10000, 99999)}`,
    alarmLine: `555 1${random.integer(100, 999)}`,
    controllerFamily: plan.controllerFamily,
    standardBuiltTo:
      (modernised ?? year) >= 2018
        ? "EN 81-20:2014"
        : plan.type === "hydraulic"
          ? "EN 81-2:1998"
          : "EN 81-1:1998",
    installedOn: `${year}-0${random.integer(1, 9)}-1${random.integer(0, 9)}`,
    modernisedOn: modernised ? `${modernised}-0${random.integer(1, 9)}-15` : null,
    magnetLength: random.pick([0.3, 0.25, 0.2]),
    sensorSpacing: spacing,
    unlockNeeds: random.pick(["both", "either"] as const),
    unlockingZone: 0.2,
    zoneTolerance: 0.005,
    upFinalDistance: 0.15,
    downFinalDistance: 0.15,
    busBitRate: 125_000,
    busLength: 12 + plan.landings * 4,
    landings: landingsOf(plan.landings, random),
  };
}

function landingsOf(count: number, random: SeededRandom): LiftInput["landings"] {
  const height = random.pick([2.8, 2.9, 3, 3.1]);
  const ground = random.pick([3.2, 3.6, 4]);
  return Array.from({ length: count }, (_, index) => ({
    marking: String(index),
    name: ordinals[index] ?? "",
    level: index === 0 ? 0 : Math.round((ground + (index - 1) * height) * 1000) / 1000,
  }));
}

/** The lift of the picture: Kittiwake House, Lift 2. */
export const kittiwakeLift2: Partial<LiftInput> = {
  standardBuiltTo: "EN 81-20:2020",
  installedOn: "2021-05-12",
  modernisedOn: null,
  magnetLength: 0.3,
  sensorSpacing: 0.06,
  unlockNeeds: "both",
  landings: [0, 3.2, 6, 8.8, 11.6, 14.4, 17.2, 20].map((level, index) => ({
    marking: String(index),
    name: index === 7 ? "Terrace" : (ordinals[index] ?? ""),
    level,
  })),
};
