import type { UnitSystem } from "../quantities.ts";
import type { Calculator } from "./calculator.ts";
import { type CalculatorInput, isShown, type NumberField, startInput } from "./field.ts";
import type { Comparison, Result } from "./result.ts";

/** Plus-minus by field key, SI. */
export type Tolerances = Readonly<Record<string, number>>;

/** A result line and how far it may lie from what was computed, SI. */
export interface Spread {
  readonly key: string;
  /** What was computed from the values as entered. */
  readonly value: number;
  /** Least and most with every input at an end of its tolerance. */
  readonly worst: readonly [number, number];
  /** Plus-minus by the root of the sum of squares: inputs that are off independently of one another. */
  readonly rootSumSquare: number;
  /** The input whose tolerance moves this line most. */
  readonly mostFrom: string;
}

export interface Uncertainty {
  readonly values: readonly Spread[];
  readonly comparisons: readonly Spread[];
  /** Whether the verdict stays what it is; null where there is none, or an end of a tolerance cannot be computed. */
  readonly standsInWorstCase: boolean | null;
  readonly standsByRootSumSquare: boolean | null;
  /** Fields whose tolerance could not be used in full, because its end lies outside the field's range. */
  readonly cut: readonly string[];
}

/** Up to so many inputs every combination of ends is computed; beyond, the changes of single inputs are added. */
const mostCorners = 8;

interface Ends {
  readonly key: string;
  readonly low: number;
  readonly high: number;
}

/** The number fields that are shown and have a value inside their range. */
export function numbersEntered(
  calculator: Calculator,
  input: CalculatorInput,
): readonly { readonly field: NumberField; readonly value: number }[] {
  const filled = { ...startInput(calculator.inputs), ...input };
  return calculator.inputs.flatMap((field) => {
    const value = filled[field.key];
    if (field.kind !== "number" || typeof value !== "number") return [];
    const isInside = value >= field.range[0] && value <= field.range[1];
    return isInside && isShown(field, calculator.inputs, filled) ? [{ field, value }] : [];
  });
}

function endsOf(calculator: Calculator, input: CalculatorInput, tolerances: Tolerances) {
  const ends: Ends[] = [];
  const cut: string[] = [];
  for (const { field, value } of numbersEntered(calculator, input)) {
    const tolerance = tolerances[field.key] ?? 0;
    // A whole number is counted, not measured.
    if (!(tolerance > 0) || !Number.isFinite(tolerance) || field.whole === true) continue;
    const low = Math.max(field.range[0], value - tolerance);
    const high = Math.min(field.range[1], value + tolerance);
    if (low > value - tolerance || high < value + tolerance) cut.push(field.key);
    ends.push({ key: field.key, low, high });
  }
  return { ends, cut };
}

/** How far a comparison is inside its limits; below 0 it is outside. Null where it is not judged. */
export function roomOf({ value, limit, holds }: Comparison): number | null {
  if (value === null || holds === null) return null;
  const rooms = [
    ...(limit.least === null ? [] : [value - limit.least]),
    ...(limit.most === null ? [] : [limit.most - value]),
  ];
  return rooms.length === 0 ? null : Math.min(...rooms);
}

type Lines = ReadonlyMap<string, number>;

function linesOf(result: Result): Lines {
  const lines = new Map<string, number>();
  for (const { key, value } of result.values) lines.set(`value ${key}`, value);
  for (const each of result.comparisons) {
    if (each.value !== null) lines.set(`comparison ${each.key}`, each.value);
    const room = roomOf(each);
    if (room !== null) lines.set(`room ${each.key}`, room);
  }
  return lines;
}

/** Every combination of ends, as inputs; none where there are too many of them. */
function corners(ends: readonly Ends[], input: CalculatorInput): CalculatorInput[] {
  if (ends.length > mostCorners) return [];
  return ends.reduce<CalculatorInput[]>(
    (all, { key, low, high }) =>
      all.flatMap((one) => [
        { ...one, [key]: low },
        { ...one, [key]: high },
      ]),
    [input],
  );
}

interface Computed {
  readonly nominal: Result;
  readonly singles: readonly { readonly key: string; readonly low: Lines; readonly high: Lines }[];
  readonly corners: readonly Lines[];
  readonly verdicts: readonly Result["verdict"][];
}

/** Null where the line is not computed at every end: its spread is then not known. */
function spreadOf(key: string, line: string, computed: Computed, nominal: Lines): Spread | null {
  const value = nominal.get(line);
  if (value === undefined) return null;
  const all = [...computed.singles.flatMap(({ low, high }) => [low, high]), ...computed.corners];
  if (all.some((lines) => !lines.has(line))) return null;
  const single = computed.singles.map(({ key: from, low, high }) => {
    const changes = [low, high].map((lines) => (lines.get(line) ?? value) - value);
    return { from, least: Math.min(...changes, 0), most: Math.max(...changes, 0) };
  });
  const sizes = single.map(({ from, least, most }) => ({ from, size: Math.max(-least, most) }));
  const found = computed.corners.map((lines) => lines.get(line) ?? value);
  const worst: [number, number] =
    found.length === 0
      ? [
          single.reduce((sum, { least }) => sum + least, value),
          single.reduce((sum, { most }) => sum + most, value),
        ]
      : [Math.min(value, ...found), Math.max(value, ...found)];
  const largest = sizes.reduce((one, other) => (other.size > one.size ? other : one), { from: "", size: 0 });
  return {
    key,
    value,
    worst,
    rootSumSquare: Math.hypot(...sizes.map(({ size }) => size)),
    mostFrom: largest.from,
  };
}

function standsInWorstCase({ nominal, verdicts }: Computed): boolean | null {
  const { holds } = nominal.verdict;
  if (holds === null) return null;
  if (verdicts.some((verdict) => verdict.holds === null)) return null;
  return verdicts.every((verdict) => verdict.holds === holds);
}

function standsByRootSumSquare(computed: Computed, lines: Lines): boolean | null {
  const { nominal } = computed;
  if (nominal.verdict.holds === null) return null;
  const rooms: Spread[] = [];
  for (const each of nominal.comparisons) {
    if (roomOf(each) === null) continue;
    const spread = spreadOf(each.key, `room ${each.key}`, computed, lines);
    if (spread === null) return null;
    rooms.push(spread);
  }
  if (rooms.length === 0) return null;
  return nominal.verdict.holds
    ? rooms.every(({ value, rootSumSquare }) => value - rootSumSquare >= -1e-9)
    : rooms.some(({ value, rootSumSquare }) => value + rootSumSquare < 0);
}

/**
 * What tolerances of the inputs do to every line of the result and to its verdict. Inputs are taken to the ends of
 * their tolerances; a line that turns round between the ends is not followed there.
 */
export function uncertaintyOf(
  calculator: Calculator,
  input: CalculatorInput,
  tolerances: Tolerances,
  system: UnitSystem = "metric",
): Uncertainty {
  const nominal = calculator.compute(input, system);
  const { ends, cut } = endsOf(calculator, input, tolerances);
  const at = (changed: CalculatorInput): Result => calculator.compute({ ...input, ...changed }, system);
  const singles = ends.map(({ key, low, high }) => ({
    key,
    results: [at({ [key]: low }), at({ [key]: high })],
  }));
  const atCorners = corners(ends, input).map(at);
  const computed: Computed = {
    nominal,
    singles: singles.map(({ key, results: [low, high] }) => ({
      key,
      low: linesOf(low ?? nominal),
      high: linesOf(high ?? nominal),
    })),
    corners: atCorners.map(linesOf),
    verdicts: [...singles.flatMap(({ results }) => results), ...atCorners].map(({ verdict }) => verdict),
  };
  const lines = linesOf(nominal);
  const spreads = (kind: string, keys: readonly string[]): Spread[] =>
    keys.flatMap((key) => {
      const spread = spreadOf(key, `${kind} ${key}`, computed, lines);
      return spread === null ? [] : [spread];
    });
  return {
    values: spreads(
      "value",
      nominal.values.map(({ key }) => key),
    ),
    comparisons: spreads(
      "comparison",
      nominal.comparisons.map(({ key }) => key),
    ),
    standsInWorstCase: standsInWorstCase(computed),
    standsByRootSumSquare: standsByRootSumSquare(computed, lines),
    cut,
  };
}
