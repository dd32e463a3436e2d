import type { ValuesOf } from "./field.ts";
import type { governorFields } from "./governor-fields.ts";
import {
  fastestFor,
  fastestOn,
  guidedTravel,
  leastStroke,
  reducedStrokeAbove,
  type TrippingBounds,
  trippingBounds,
} from "./governor-physics.ts";
import type { Pen } from "./pen.ts";
import type { Comparison } from "./result.ts";
import { clause, derived } from "./source.ts";

export type GovernorValues = ValuesOf<typeof governorFields>;

const edition = (status: "second-hand" | "from memory" | "published", number: string, words: string) =>
  clause(status, "EN 81-20", "2020", number, words);
export const trippingSource = edition(
  "second-hand",
  "5.6.2.2.1.1",
  "Tripping speed of the car governor by kind of safety gear",
);
export const gearSource = edition(
  "second-hand",
  "5.6.2.1.2",
  "Safety gear of the car progressive; instantaneous only up to 0.63 m/s",
);
export const switchSource = edition(
  "from memory",
  "5.6.2.2.1.6",
  "Overspeed switch acts before tripping; up to 1 m/s at the latest at tripping",
);
export const otherSource = edition(
  "from memory",
  "5.6.2.2.1.1",
  "Counterweight governor trips above the car's, by no more than 10 %",
);
export const accumulationSource = edition(
  "second-hand",
  "5.8.2.1",
  "Energy accumulation buffers up to 1.0 m/s",
);
export const linearSource = edition("second-hand", "5.8.2.1.1", "Stroke at least 0.135 v² and 65 mm");
export const dissipationSource = edition(
  "second-hand",
  "5.8.2.2",
  "Stroke at least 0.0674 v²; with monitored slowdown above 2.5 m/s of the contact speed, then at least 0.42 m",
);
export const guidedSource = edition("published", "5.2.5.6.1.1", "Guided travel at least 0.035 v²");
export const gravitySource = derived("stop of a rising car by gravity at 115 % of rated speed");

/** "Less than": the bound itself is outside, by a step no governor is tested to. */
const step = 1e-6;

export const boundsOf = ({ speed, gear }: GovernorValues): TrippingBounds | null =>
  gear === undefined ? null : trippingBounds(speed, gear);

/** The contact speed that may count; null where it may not or is not entered. */
export function contactOf({ buffer, speed, contactSpeed }: GovernorValues): number | null {
  if (buffer !== "dissipation" || contactSpeed === undefined) return null;
  return speed > reducedStrokeAbove && contactSpeed <= speed ? contactSpeed : null;
}

export function strokeOf(values: GovernorValues): number | null {
  const { buffer, speed } = values;
  return buffer === undefined ? null : leastStroke({ buffer, speed, contactSpeed: contactOf(values) });
}

export function trippingRange({ least, below }: TrippingBounds, pen: Pen): string {
  return `at least ${pen.write(least, "m/s", 3)} and less than ${pen.write(below, "m/s", 3)}`;
}

function compareTripping(values: GovernorValues, bounds: TrippingBounds, pen: Pen): Comparison[] {
  const { gear = "progressive", speed, tripping } = values;
  const fastest = fastestFor(gear);
  const range = trippingRange(bounds, pen);
  const found = [
    pen.compare({
      key: "tripping",
      label: "Tripping speed of the car governor",
      value: tripping ?? null,
      unit: "m/s",
      digits: 3,
      least: bounds.least,
      most: bounds.below - step,
      limitWords: range,
      source: trippingSource,
      field: "tripping",
      ...(tripping === undefined ? { open: `not entered; it belongs to ${range}.` } : {}),
    }),
  ];
  if (fastest === null) return found;
  return [
    pen.compare({
      key: "gear",
      label: "Rated speed for this safety gear",
      value: speed,
      unit: "m/s",
      digits: 2,
      most: fastest,
      limitWords: `at most ${pen.write(fastest, "m/s", 2)}`,
      source: gearSource,
      field: "gear",
    }),
    ...found,
  ];
}

function compareOthers(values: GovernorValues, pen: Pen): Comparison[] {
  const { speed, tripping, switchSpeed, otherTripping } = values;
  const open =
    tripping === undefined ? { open: "the tripping speed of the car governor is not entered." } : {};
  const trip = tripping ?? 0;
  const written = pen.write(trip, "m/s", 3);
  const found: Comparison[] = [];
  if (switchSpeed !== undefined) {
    found.push(
      pen.compare({
        key: "switch",
        label: "Overspeed switch",
        value: switchSpeed,
        unit: "m/s",
        digits: 3,
        most: speed > 1 ? trip - step : trip,
        limitWords:
          speed > 1 ? `below the tripping speed, ${written}` : `at most the tripping speed, ${written}`,
        source: switchSource,
        field: "switchSpeed",
        ...open,
      }),
    );
  }
  if (otherTripping !== undefined) {
    found.push(
      pen.compare({
        key: "other",
        label: "Counterweight governor",
        value: otherTripping,
        unit: "m/s",
        digits: 3,
        least: trip + step,
        most: trip * 1.1,
        limitWords: `above ${written} and at most ${pen.write(trip * 1.1, "m/s", 3)}`,
        source: otherSource,
        field: "otherTripping",
        ...open,
      }),
    );
  }
  return found;
}

function compareStroke(values: GovernorValues, pen: Pen): Comparison[] {
  const { buffer, stroke } = values;
  const least = strokeOf(values);
  if (buffer === undefined) return [];
  if (least === null) {
    const open = "a non-linear buffer is judged by how it brakes, not by its stroke.";
    const asked = {
      key: "stroke",
      label: "Stroke of the buffer",
      value: null,
      unit: "mm",
      digits: 1,
    } as const;
    return [pen.compare({ ...asked, limitWords: "", source: accumulationSource, open })];
  }
  const words = `at least ${pen.write(least, "mm", 1)}`;
  return [
    pen.compare({
      key: "stroke",
      label: "Stroke of the buffer",
      value: stroke ?? null,
      unit: "mm",
      digits: 1,
      least,
      limitWords: words,
      source: buffer === "linear" ? linearSource : dissipationSource,
      field: "stroke",
      ...(stroke === undefined ? { open: `not entered; it needs ${words}.` } : {}),
    }),
  ];
}

function compareBuffer(values: GovernorValues, pen: Pen): Comparison[] {
  const { buffer, speed, guided } = values;
  const found: Comparison[] = [];
  const fastest = buffer === undefined ? null : fastestOn(buffer);
  if (fastest !== null) {
    found.push(
      pen.compare({
        key: "buffer",
        label: "Rated speed for this buffer",
        value: speed,
        unit: "m/s",
        digits: 2,
        most: fastest,
        limitWords: `at most ${pen.write(fastest, "m/s", 2)}`,
        source: accumulationSource,
        field: "buffer",
      }),
    );
  }
  found.push(...compareStroke(values, pen));
  if (guided === undefined) return found;
  const least = guidedTravel(speed);
  return [
    ...found,
    pen.compare({
      key: "guided",
      label: "Guided travel left",
      value: guided,
      unit: "mm",
      digits: 1,
      least,
      limitWords: `at least ${pen.write(least, "mm", 1)}`,
      source: guidedSource,
      field: "guided",
    }),
  ];
}

export function compareGovernor(values: GovernorValues, pen: Pen): Comparison[] {
  const bounds = boundsOf(values);
  return [
    ...(bounds === null ? [] : compareTripping(values, bounds, pen)),
    ...compareOthers(values, pen),
    ...compareBuffer(values, pen),
  ];
}

/** Comparisons of something measured; the others only say which kind may be used at all. */
export const measuredKeys: readonly string[] = ["tripping", "switch", "other", "stroke", "guided"];
