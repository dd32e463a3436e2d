import type { ValuesOf } from "./field.ts";
import type { Pen } from "./pen.ts";
import type { Comparison, Verdict } from "./result.ts";
import { whoDecides } from "./source.ts";
import type { tractionFields } from "./traction-fields.ts";
import { conditionSource, pressureSource } from "./traction-formulas.ts";
import {
  brakingCase,
  type Groove,
  heldRatio,
  loadingCase,
  type Masses,
  pressureLimit,
  pullAt,
  ropePressure,
  type Stalled,
  stalledCase,
  type Worst,
} from "./traction-physics.ts";

export type TractionValues = ValuesOf<typeof tractionFields>;

export interface Traction {
  readonly groove: Groove;
  readonly masses: Masses;
  /** m/s */
  readonly ropeSpeed: number;
  readonly loading: Worst;
  readonly braking: Worst;
  readonly stalled: Stalled;
  /** e^(f alpha) of each case. */
  readonly held: { readonly loading: number; readonly braking: number; readonly stalled: number };
  /** Pa; null where rope or sheave diameter is not entered. */
  readonly pressure: number | null;
}

export function tractionOf(values: TractionValues): Traction {
  const roping = Number(values.roping.charAt(0));
  const groove: Groove = {
    form: values.form,
    gamma: (values.form === "round" ? values.gamma : values.gammaV) ?? 0,
    beta: values.form === "hardened wedge" ? 0 : (values.beta ?? 0),
  };
  const masses: Masses = {
    car: values.car,
    ratedLoad: values.ratedLoad,
    counterweight: values.counterweight,
    ropes: values.ropes * values.ropeMass * values.travel,
    compensation: values.compensation,
    cable: values.cable ?? 0,
    roping,
  };
  const ropeSpeed = values.speed * roping;
  const held = (loadCase: "loading" | "braking" | "stalled"): number =>
    heldRatio(groove, loadCase, ropeSpeed, values.wrap);
  const { ropeDiameter, sheave, ropes } = values;
  const force = pullAt(masses, values.ratedLoad, 0, 0).car;
  return {
    groove,
    masses,
    ropeSpeed,
    loading: loadingCase(masses),
    braking: brakingCase(masses, values.retardation),
    stalled: stalledCase(masses),
    held: { loading: held("loading"), braking: held("braking"), stalled: held("stalled") },
    pressure:
      ropeDiameter === undefined || sheave === undefined
        ? null
        : ropePressure({ groove, force, ropes, ropeDiameter, sheave }),
  };
}

const caseWords = ({ load, direction, place }: Worst): string =>
  direction === null
    ? `${load} load, standing, ${place}`
    : `car ${load}, stopped going ${direction}, ${place}`;

export function compareTraction(values: TractionValues, traction: Traction, pen: Pen): Comparison[] {
  const write = (value: number): string => pen.write(value, "one", 3);
  const { loading, braking, stalled, held, pressure } = traction;
  const ratio = { unit: "one", digits: 3, source: conditionSource } as const;
  const found = [
    pen.compare({
      ...ratio,
      key: "loading",
      label: `Loading, ${caseWords(loading)}: forces`,
      value: loading.ratio,
      most: held.loading,
      limitWords: `the groove holds ${write(held.loading)}`,
    }),
    pen.compare({
      ...ratio,
      key: "braking",
      label: `Emergency stop, ${caseWords(braking)}: forces`,
      value: braking.ratio,
      most: held.braking,
      limitWords: `the groove holds ${write(held.braking)}`,
    }),
    pen.compare({
      ...ratio,
      key: "stalled",
      label: `Stalled, ${stalled.rests} on its buffer: forces`,
      value: stalled.ratio,
      least: held.stalled,
      limitWords: `the ropes slip from ${write(held.stalled)} on`,
      ...(values.stall === "device"
        ? { open: "an electric safety device stops the machine instead; prove the device." }
        : {}),
    }),
  ];
  if (pressure === null) return found;
  const most = pressureLimit(traction.ropeSpeed);
  return [
    ...found,
    pen.compare({
      key: "pressure",
      label: "Pressure in the groove",
      value: pressure,
      unit: "N/mm²",
      digits: 3,
      most,
      limitWords: `at most ${pen.write(most, "N/mm²", 3)} at this speed of the rope`,
      source: pressureSource,
    }),
  ];
}

const outOfService = "Until then the lift stays out of service: a car that slips is not held.";

function failed(traction: Traction, key: string, pen: Pen): Omit<Verdict, "word" | "holds"> {
  const write = (value: number): string => pen.write(value, "one", 3);
  const { loading, braking, stalled, held } = traction;
  const compareWear = "Compare masses and groove with the proof of the lift; measure the groove's wear.";
  switch (key) {
    case "loading":
      return {
        sentence: `The ropes slip while the car is loaded: ${write(loading.ratio)} over the sheave, ${write(held.loading)} is held.`,
        because: `${caseWords(loading)}.`.replace(/^./, (first) => first.toUpperCase()),
        next: compareWear,
        until: `${outOfService} ${whoDecides}`,
      };
    case "braking":
      return {
        sentence: `The ropes slip in an emergency stop: ${write(braking.ratio)} over the sheave, ${write(held.braking)} is held.`,
        because: `${caseWords(braking)}.`.replace(/^./, (first) => first.toUpperCase()),
        next: `${compareWear} Check that the brake does not stop harder than entered.`,
        until: `${outOfService} ${whoDecides}`,
      };
    case "stalled":
      return {
        sentence: `With the ${stalled.rests} on its buffer the ropes do not slip: ${write(stalled.ratio)}, ${write(held.stalled)} is needed.`,
        because: "The machine could lift the other side on: it would fall back into slack ropes.",
        next: "Ask the maker whether an electric safety device stops the machine, and prove that it does.",
        until: `${outOfService} ${whoDecides}`,
      };
    default:
      return {
        sentence: "The ropes press harder into the groove than the older limit allows.",
        because: "Traction is kept; groove and ropes wear faster.",
        next: "Compare with the maker's data, and measure wear of groove and ropes more often.",
        until: whoDecides,
      };
  }
}

export function tractionVerdict(
  values: TractionValues,
  traction: Traction,
  comparisons: readonly Comparison[],
  pen: Pen,
): Verdict {
  const first = comparisons.find((each) => each.holds === false);
  if (first !== undefined) return { word: "Outside", holds: false, ...failed(traction, first.key, pen) };
  const { loading, braking, held } = traction;
  const margins = [held.loading / loading.ratio - 1, held.braking / braking.ratio - 1];
  const least = Math.min(...margins);
  const which = least === margins[0] ? "while loading" : "in an emergency stop";
  return {
    word: "Within",
    holds: true,
    sentence: `Traction is kept: the least margin is ${pen.write(least, "%", 1)}, ${which}.`,
    because:
      values.stall === "device"
        ? "When stalled an electric safety device has to stop the machine; it is not judged here."
        : "When stalled the ropes slip, as they must.",
    next: "Prove it by the tests of the maker and of local codes; grease, rust and wear change what the groove holds.",
    until: whoDecides,
  };
}
