import type { Unit } from "../quantities.ts";
import type { Pen } from "./pen.ts";

/** Factors by which a typed number is most often wrong: a slipped point, or millimetres where metres were meant. */
const slips = [0.1, 10, 0.001, 1000, 0.01, 100];

interface Ranged {
  readonly label: string;
  readonly unit: Unit;
  readonly range: readonly [number, number];
  readonly digits: number;
  readonly whole?: boolean;
}

/** Why a number does not fit its field or cell, with what was probably meant; null where it fits. */
export function numberProblem(field: Ranged, value: number, pen: Pen): string | null {
  const [least, most] = field.range;
  const write = (shown: number): string => pen.write(shown, field.unit, field.digits);
  if (value >= least && value <= most) {
    if (field.whole !== true || Number.isInteger(value)) return null;
    return `${field.label} is a whole number. It is left out until you decide.`;
  }
  const meant = slips.map((slip) => value * slip).find((guess) => guess >= least && guess <= most);
  const guess =
    meant !== undefined && meant !== 0 && field.whole !== true ? ` Did you mean ${write(meant)}?` : "";
  return `${field.label} lies between ${write(least)} and ${write(most)}.${guess} It is left out until you decide.`;
}
