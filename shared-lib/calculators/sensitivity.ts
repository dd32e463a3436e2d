import { digitsIn, fromSi, toSi, type UnitSystem, unitIn } from "../quantities.ts";
import type { Calculator } from "./calculator.ts";
import type { CalculatorInput, NumberField } from "./field.ts";
import type { Result } from "./result.ts";
import { numbersEntered, roomOf } from "./uncertainty.ts";

/** What one input alone would have to be, SI; null where no value in its range does it. */
export interface NeededChange {
  readonly field: NumberField;
  readonly from: number;
  readonly to: number | null;
}

/** Steps looked at on each side before bisection; a stretch that holds and is narrower than a step is not found. */
const steps = 40;
const halvings = 40;

const judged = (result: Result): number => result.comparisons.filter(({ holds }) => holds !== null).length;

/** The first value that holds going from a value to an end of its range, narrowed to the edge. */
function firstThatHolds(from: number, end: number, holds: (value: number) => boolean): number | null {
  let [failing, passing] = [from, Number.NaN];
  for (let step = 1; step <= steps; step += 1) {
    // Small steps near the value, long ones far away.
    const value = step === steps ? end : from + (end - from) * (step / steps) ** 3;
    if (holds(value)) {
      passing = value;
      break;
    }
    failing = value;
  }
  if (Number.isNaN(passing)) return null;
  for (let half = 0; half < halvings; half += 1) {
    const middle = (failing + passing) / 2;
    if (holds(middle)) passing = middle;
    else failing = middle;
  }
  return passing;
}

/** As few digits as the field shows, rounded to the side that holds, so that what is read does hold. */
function rounded(
  found: number,
  from: number,
  field: NumberField,
  system: UnitSystem,
  holds: (value: number) => boolean,
): number {
  const unit = unitIn(system, field.unit);
  const digits = field.whole === true ? 0 : digitsIn(unit, field.unit, field.digits);
  const scale = 10 ** digits;
  const shown = fromSi(found, unit) * scale;
  const away = toSi((found > from ? Math.ceil(shown - 1e-7) : Math.floor(shown + 1e-7)) / scale, unit);
  return away >= field.range[0] && away <= field.range[1] && holds(away) ? away : found;
}

/**
 * For each number entered, the nearest value at which all comparisons hold while everything else stays as it is.
 * Empty where nothing fails. Limits themselves (plus-minus fields) are not looked at: they are given.
 */
export function changesForPass(
  calculator: Calculator,
  input: CalculatorInput,
  system: UnitSystem = "metric",
): readonly NeededChange[] {
  const nominal = calculator.compute(input, system);
  if (nominal.verdict.holds !== false || judged(nominal) === 0) return [];
  return numbersEntered(calculator, input)
    .filter(({ field }) => field.plusMinus !== true)
    .map(({ field, value }) => {
      const holds = (changed: number): boolean => {
        const number = field.whole === true ? Math.round(changed) : changed;
        const result = calculator.compute({ ...input, [field.key]: number }, system);
        return (
          judged(result) >= judged(nominal) &&
          result.verdict.holds === true &&
          result.problems.every((problem) => problem.field !== field.key) &&
          result.comparisons.every((each) => each.holds !== false)
        );
      };
      const found = field.range
        .map((end) => firstThatHolds(value, end, holds))
        .filter((each) => each !== null)
        .sort((one, other) => Math.abs(one - value) - Math.abs(other - value));
      const [nearest] = found;
      const to = nearest === undefined ? null : rounded(nearest, value, field, system, holds);
      return { field, from: value, to };
    });
}

export interface Mover {
  readonly field: NumberField;
  /** Line that is moved. */
  readonly line: string;
  /** How far it moves, SI, when the input alone grows by one hundredth of itself. */
  readonly by: number;
}

/** What is asked of a result: the room of its first judged comparison, else its first value. */
function mainLine(result: Result): { label: string; of: (other: Result) => number | null } | null {
  const comparison = result.comparisons.find((each) => roomOf(each) !== null);
  if (comparison !== undefined) {
    const same = (other: Result) => other.comparisons.find(({ key }) => key === comparison.key);
    return {
      label: comparison.label,
      of: (other) => {
        const found = same(other);
        return found === undefined ? null : roomOf(found);
      },
    };
  }
  const [value] = result.values;
  if (value === undefined) return null;
  return {
    label: value.label,
    of: (other) => other.values.find(({ key }) => key === value.key)?.value ?? null,
  };
}

/** The number entered that moves the result most, each changed alone by one hundredth of itself; null where none does. */
export function movesMost(calculator: Calculator, input: CalculatorInput): Mover | null {
  const nominal = calculator.compute(input);
  const line = mainLine(nominal);
  const before = line?.of(nominal) ?? null;
  if (line === null || before === null) return null;
  let largest: Mover | null = null;
  for (const { field, value } of numbersEntered(calculator, input)) {
    if (field.whole === true || value === 0) continue;
    const up = value * 1.01;
    const isInside = up >= field.range[0] && up <= field.range[1];
    const changed = isInside ? up : value * 0.99;
    const after = line.of(calculator.compute({ ...input, [field.key]: changed }));
    if (after === null) continue;
    const by = isInside ? after - before : before - after;
    if (Math.abs(by) > Math.abs(largest?.by ?? 0)) largest = { field, line: line.label, by };
  }
  return largest;
}
