import { type Expression, type FormulaProblem, functionNames } from "./expression.ts";
import { parse } from "./parse.ts";

/** Powers of the SI base units; a base unit that is not in it has power 0, an empty one is a pure number. */
export type Dimension = Readonly<Record<string, number>>;

export const baseUnits = ["m", "kg", "s", "A", "K"] as const;

const pure: Dimension = {};
/** The number 0 fits beside any dimension. */
const anything = "anything";
type Found = Dimension | typeof anything;

const nearly = (one: number, other: number): boolean => Math.abs(one - other) < 1e-9;

export const sameDimension = (one: Dimension, other: Dimension): boolean =>
  [...Object.keys(one), ...Object.keys(other)].every((unit) => nearly(one[unit] ?? 0, other[unit] ?? 0));

/** "m^2·kg·s^-2"; "a pure number" where it has none. */
export function writeDimension(dimension: Dimension): string {
  const parts = Object.entries(dimension).filter(([, power]) => !nearly(power, 0));
  if (parts.length === 0) return "a pure number";
  return parts.map(([unit, power]) => (nearly(power, 1) ? unit : `${unit}^${power}`)).join("·");
}

class Mismatch extends Error {
  readonly problem: FormulaProblem;
  constructor(at: number, sentence: string) {
    super(sentence);
    this.problem = { at, sentence };
  }
}

function scaled(one: Dimension, by: number): Dimension {
  return Object.fromEntries(Object.entries(one).map(([unit, power]) => [unit, power * by]));
}

function times(one: Dimension, other: Dimension, sign: number): Dimension {
  const units = [...new Set([...Object.keys(one), ...Object.keys(other)])];
  return Object.fromEntries(units.map((unit) => [unit, (one[unit] ?? 0) + sign * (other[unit] ?? 0)]));
}

/** The value of an exponent written in figures, as in 2, -3, 3/2; null where it holds a symbol. */
function figure(expression: Expression): number | null {
  if (expression.kind === "number") return Number(expression.text);
  if (expression.kind === "negative") {
    const value = figure(expression.of);
    return value === null ? null : -value;
  }
  if (expression.kind !== "operation" || expression.operator !== "/") return null;
  const [over, under] = [figure(expression.left), figure(expression.right)];
  return over === null || under === null || under === 0 ? null : over / under;
}

type Known = ReadonlyMap<string, Dimension>;

function oneOf(found: readonly Found[], at: number, words: string): Found {
  let common: Found = anything;
  for (const each of found) {
    if (each === anything) continue;
    if (common !== anything && !sameDimension(common, each)) {
      throw new Mismatch(at, `${words}: ${writeDimension(common)} and ${writeDimension(each)}.`);
    }
    common = each;
  }
  return common;
}

function mustBePure(found: Found, at: number, words: string): void {
  if (found !== anything && !sameDimension(found, pure)) {
    throw new Mismatch(at, `${words} must be a pure number, not ${writeDimension(found)}.`);
  }
}

function dimension(expression: Expression, known: Known): Found {
  switch (expression.kind) {
    case "number":
      return Number(expression.text) === 0 ? anything : pure;
    case "name": {
      const found = known.get(expression.name);
      if (found === undefined) throw new Mismatch(expression.at, `"${expression.name}" is not explained.`);
      return found;
    }
    case "negative":
      return dimension(expression.of, known);
    case "operation":
      return ofOperation(expression, known);
    case "function":
      return ofFunction(expression, known);
  }
}

function ofOperation(expression: Expression & { kind: "operation" }, known: Known): Found {
  const { operator, at } = expression;
  const left = dimension(expression.left, known);
  const right = dimension(expression.right, known);
  if (operator === "+" || operator === "-") {
    return oneOf([left, right], at, `"${operator}" joins different dimensions`);
  }
  if (operator === "^") {
    mustBePure(right, at, "An exponent");
    const power = figure(expression.right);
    if (power === null) mustBePure(left, at, "What is raised to a symbol");
    return left === anything || power === null ? pure : scaled(left, power);
  }
  if (left === anything) return anything;
  return times(left, right === anything ? pure : right, operator === "*" ? 1 : -1);
}

function ofFunction({ name, of, at }: Expression & { kind: "function" }, known: Known): Found {
  const found = of.map((each) => dimension(each, known));
  const first = found[0] ?? pure;
  switch (name) {
    case "sqrt":
      return first === anything ? anything : scaled(first, 0.5);
    case "min":
    case "max":
      return oneOf(found, at, `"${name}" takes different dimensions`);
    case "abs":
    case "sum":
      return first;
    case "exp":
    case "ln":
    case "sin":
    case "cos":
    case "tan":
      mustBePure(first, at, `What "${name}" is taken of`);
      return pure;
  }
}

export type Measured =
  | { readonly ok: true; readonly dimension: Dimension }
  | { readonly ok: false; readonly problem: FormulaProblem };

const answered = (work: () => Dimension): Measured => {
  try {
    return { ok: true, dimension: work() };
  } catch (error) {
    if (error instanceof Mismatch) return { ok: false, problem: error.problem };
    throw error;
  }
};

/** The one dimension of expressions that must agree: the sides of an equation. */
export function commonDimension(sides: readonly Expression[], known: Known, at: number): Measured {
  return answered(() => {
    const found = oneOf(
      sides.map((side) => dimension(side, known)),
      at,
      "The two sides have different dimensions",
    );
    return found === anything ? pure : found;
  });
}

const ofBase: Known = new Map(baseUnits.map((unit) => [unit, { [unit]: 1 }]));

/** Reads a dimension written as a product of SI base units: "m/s^2", "kg*m^2/s^3", "1" for a pure number. */
export function readDimension(text: string): Measured {
  const parsed = parse(text);
  if (!parsed.ok) return parsed;
  const [equation, more] = parsed.equations;
  if (equation === undefined || more !== undefined || equation.rest.length > 0) {
    return { ok: false, problem: { at: 0, sentence: `"${text}" is no product of base units.` } };
  }
  return commonDimension([equation.first], ofBase, 0);
}

export const isFunctionName = (name: string): boolean => functionNames.some((one) => one === name);
