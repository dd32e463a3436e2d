import type { Pen } from "./pen.ts";
import type { Comparison, Verdict } from "./result.ts";
import { clause, derived, site, whoDecides } from "./source.ts";
import { reachOf, type Zone, type Zones } from "./zone-geometry.ts";

/** What is known about the zone at one landing, all lengths in m; null or undefined where it is not. */
export interface ZoneState {
  readonly where: string;
  readonly sensorsOn: "car" | "well";
  readonly centre: number | null;
  readonly zones: Zones | null;
  readonly tolerance: number | undefined;
  readonly unlockNeeds: "either" | "both" | undefined;
  readonly unlockingZone: number | undefined;
  readonly sillDistance: number | undefined;
  readonly others: { readonly checked: number; readonly largest: number } | null;
}

export const stoppingAccuracy = clause(
  "second-hand",
  "EN 81-20",
  "2020",
  "5.12.1.1.4",
  "Stopping accuracy ±10 mm",
);
export const unlockingZoneSource = clause(
  "second-hand",
  "EN 81-20",
  "2020",
  "5.3.8.1",
  "Unlocking zone ±0.20 m; ±0.35 m where mechanically driven car and landing doors are operated simultaneously",
);
export const zoneGeometry = derived("geometry of two sensors and a magnet");
const ownTolerance = site("from the site's drawing");

const digitsFor = (value: number): number => (Math.abs(value) < 0.002 ? 1 : 0);
const size = (pen: Pen, value: number): string => pen.write(Math.abs(value), "mm", digitsFor(value));

/** The zone that unlocks: where both or either signal is on, as the lift's record says. */
export function unlockingSignal(state: ZoneState): Zone | null {
  if (state.zones === null || state.unlockNeeds === undefined) return null;
  return state.unlockNeeds === "both" ? state.zones.both : state.zones.either;
}

function compareSills(state: ZoneState, pen: Pen): Comparison[] {
  if (state.sillDistance === undefined) return [];
  return [
    pen.compare({
      key: "sills",
      label: "Car sill to landing sill",
      value: state.sillDistance,
      unit: "mm",
      digits: digitsFor(state.sillDistance),
      signed: true,
      least: -0.01,
      most: 0.01,
      limitWords: `the stopping accuracy, ±${size(pen, 0.01)}`,
      source: stoppingAccuracy,
      field: "sillDistance",
    }),
  ];
}

function compareCentre(state: ZoneState, pen: Pen): Comparison[] {
  if (state.centre === null) return [];
  const { tolerance } = state;
  const open =
    tolerance === undefined
      ? "the standard has no limit for it, and no own tolerance is entered."
      : undefined;
  return [
    pen.compare({
      key: "centre",
      label: "Zone centre",
      value: state.centre,
      unit: "mm",
      digits: digitsFor(state.centre),
      signed: true,
      least: tolerance === undefined ? null : -tolerance,
      most: tolerance ?? null,
      limitWords: tolerance === undefined ? "" : `the site's own tolerance, ±${size(pen, tolerance)}`,
      source: ownTolerance,
      ...(open === undefined ? {} : { open }),
    }),
  ];
}

function compareReach(state: ZoneState, pen: Pen): Comparison[] {
  const zone = unlockingSignal(state);
  if (state.zones === null || state.unlockNeeds === undefined || zone === null) return [];
  const limit = state.unlockingZone;
  const words = state.unlockNeeds === "both" ? "Reach, both signals," : "Reach, either signal,";
  return [
    pen.compare({
      key: "reach",
      label: words,
      value: reachOf(zone),
      unit: "mm",
      digits: 0,
      most: limit ?? null,
      limitWords: limit === undefined ? "" : `the unlocking zone, ±${size(pen, limit)}`,
      source: unlockingZoneSource,
      ...(limit === undefined ? { open: "it is not entered which unlocking zone applies here." } : {}),
    }),
  ];
}

const pastLevel = (zone: Zone): number => Math.min(zone.to, -zone.from);

/** How far the car can move from the level, either way, with the signals that unlock on; negative: they are off there. */
function unlockingPastLevel(zones: Zones, needs: "either" | "both"): number {
  if (needs === "both") return zones.both === null ? 0 : pastLevel(zones.both);
  // Two zones with a gap between them are not one zone: the level may lie in the gap.
  return zones.both === null
    ? Math.max(pastLevel(zones.upper), pastLevel(zones.lower))
    : pastLevel(zones.either);
}

/** With the sills level the signals that unlock must be on, and with both needed they must overlap at all. */
function compareLevel(state: ZoneState, pen: Pen): Comparison[] {
  if (state.zones === null || state.centre === null || state.unlockNeeds === undefined) return [];
  return [
    pen.compare({
      key: "level",
      label: "Signals that unlock stay on past the level by",
      value: unlockingPastLevel(state.zones, state.unlockNeeds),
      unit: "mm",
      digits: 0,
      signed: true,
      least: 1e-6,
      limitWords: "more than 0 on both sides",
      source: zoneGeometry,
    }),
  ];
}

export const compareZone = (state: ZoneState, pen: Pen): Comparison[] => [
  ...compareCentre(state, pen),
  ...compareReach(state, pen),
  ...compareLevel(state, pen),
  ...compareSills(state, pen),
];

const counts = [
  "no",
  "one",
  "two",
  "three",
  "four",
  "five",
  "six",
  "seven",
  "eight",
  "nine",
  "ten",
  "eleven",
  "twelve",
];
const othersWords = (checked: number): string =>
  checked === 1
    ? "The other checked landing is"
    : `The other ${counts[checked] ?? checked} checked landings are`;

/** Name of the thing that belongs to this landing alone, and of what all landings share. */
const parts = {
  car: { own: "magnet", shared: "sensors", any: "sensor, bracket or magnet" },
  well: { own: "sensor pair", shared: "magnet on the car", any: "sensor, bracket or magnet" },
} as const;

function until(state: ZoneState, pen: Pen, failed: readonly Comparison[]): string {
  const sillsFail = failed.some((each) => each.key === "sills");
  const unlocksWrongly = failed.some((each) => each.key === "reach" || each.key === "level");
  const keepOut = unlocksWrongly
    ? "The signals that unlock are not where they must be: the lift stays out of service until they are. "
    : "";
  const step = sillsFail ? `Until then the ${size(pen, state.sillDistance ?? 0)} step stays. ` : "";
  return `${keepOut}${step}Learned positions: learn anew. ${whoDecides}`;
}

/** Blames a part only where the other landings say so. */
function centreVerdict(state: ZoneState, pen: Pen, centre: number, failed: readonly Comparison[]): Verdict {
  const { own, shared, any } = parts[state.sensorsOn];
  const amount = size(pen, centre);
  const side = centre > 0 ? "high" : "low";
  const tail = until(state, pen, failed);
  const tolerance = state.tolerance ?? 0;
  if (state.others === null) {
    return {
      word: "Outside",
      holds: false,
      sentence: `The zone centre ${state.where} is ${amount} ${side}: ${any}.`,
      because: "One landing alone cannot tell which.",
      next: "Measure another landing.",
      until: tail,
    };
  }
  if (state.others.largest <= tolerance + 1e-9) {
    const way = centre > 0 ? "down" : "up";
    return {
      word: "Misplaced",
      holds: false,
      sentence: `The ${own} ${state.where} sits ${amount} ${side} against the other landings.`,
      because: `${othersWords(state.others.checked)} within ${size(pen, state.others.largest)}, so it is this ${own}, not the ${shared}.`,
      next: `Move it ${way} ${amount}, then run both directions and measure the sills again.`,
      until: tail,
    };
  }
  return {
    word: "Outside",
    holds: false,
    sentence: `The zone centre ${state.where} is ${amount} ${side}, and other landings are out, too.`,
    because: `The worst of the others is out by ${size(pen, state.others.largest)}: what all landings share comes first, the ${shared} and the bracket.`,
    next: `Check the bracket of the ${shared}, then measure all landings again before any ${own} is moved.`,
    until: tail,
  };
}

function failedVerdict(
  state: ZoneState,
  pen: Pen,
  first: Comparison,
  failed: readonly Comparison[],
): Verdict {
  const tail = until(state, pen, failed);
  const outside = { word: "Outside", holds: false, until: tail } as const;
  if (first.key === "centre") return centreVerdict(state, pen, first.value ?? 0, failed);
  if (first.key === "reach") {
    return {
      ...outside,
      sentence: `The signals that unlock reach ${size(pen, first.value ?? 0)} from the landing, further than the unlocking zone.`,
      because: "Magnet length, sensor spacing and centre together make this reach.",
      next: "Compare magnet, spacing and the signals needed to unlock with the site's drawing. The lift stays out of service until the reach is within.",
    };
  }
  if (first.key === "level") {
    const never = state.unlockNeeds === "both" && state.zones?.both === null;
    return {
      ...outside,
      word: never ? "No overlap" : "Outside",
      sentence: never
        ? `The two zone signals ${state.where} are never on together.`
        : `With the sills level ${state.where} the signals that unlock are not all on.`,
      because: never
        ? "The magnet is not longer than the sensor spacing."
        : "The zone lies beside the level.",
      next: "Compare magnet length, sensor spacing and centre with the site's drawing.",
    };
  }
  const value = state.sillDistance ?? 0;
  const known = state.tolerance !== undefined && state.centre !== null;
  return {
    ...outside,
    sentence: `The car stops ${size(pen, value)} ${value > 0 ? "high" : "low"} ${state.where}.`,
    because: known
      ? "The zone centre is within the site's own tolerance, so the magnet does not explain it."
      : "",
    next: "Check the stored level of this landing, brake and levelling, then measure the sills again from both directions.",
  };
}

const notJudged = (state: ZoneState): string =>
  state.centre === null
    ? "The zone itself was not measured."
    : "The zone centre is not judged: no own tolerance is entered.";

function passedVerdict(state: ZoneState, pen: Pen, passed: readonly Comparison[]): Verdict {
  const centreJudged = passed.some((each) => each.key === "centre");
  const limits = passed.filter((each) => each.key !== "level");
  if (limits.length === 0) {
    const centre =
      state.centre === null ? "" : ` ${pen.write(state.centre, "mm", digitsFor(state.centre), true)}`;
    return {
      word: "Not enough",
      holds: null,
      sentence:
        state.centre === null
          ? `The zone centre ${state.where} is not known.`
          : `The zone centre ${state.where} is${centre}; there is no limit to put it against.`,
      because: "",
      next:
        state.centre === null
          ? "Enter where the zone lies, moving up, moving down, or both."
          : "Enter the site's own tolerance, the signals needed to unlock with the unlocking zone, or the measured distance of the sills.",
      until: whoDecides,
    };
  }
  const what = limits.map((each) => each.reading).join(", ");
  return {
    word: "Within",
    holds: true,
    sentence: `Within what was entered ${state.where}: ${what}.`,
    because: centreJudged ? "" : notJudged(state),
    next: state.others === null ? "The other landings each need their own measurement." : "",
    until: whoDecides,
  };
}

/** What can hurt comes first in the choice of words only where the centre does not explain it. */
const priority = ["centre", "reach", "level", "sills"];

export function zoneVerdict(state: ZoneState, comparisons: readonly Comparison[], pen: Pen): Verdict {
  const failed = comparisons
    .filter((each) => each.holds === false)
    .sort((one, other) => priority.indexOf(one.key) - priority.indexOf(other.key));
  const [first] = failed;
  if (first === undefined)
    return passedVerdict(
      state,
      pen,
      comparisons.filter((each) => each.holds === true),
    );
  return failedVerdict(state, pen, first, failed);
}
