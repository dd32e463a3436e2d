import type { Source } from "../calculators/source.ts";
import { quantityDimensions, quantityOf, type Unit } from "../quantities.ts";
import { commonDimension, type Dimension, isFunctionName, readDimension } from "./dimension.ts";
import { type FormulaProblem, namesIn, sidesOf } from "./expression.ts";
import { parse } from "./parse.ts";

/** A formula as the documentation shows it and as the tests check it. */
export interface Formula {
  readonly name: string;
  /** In the language of `expression.ts`; several equations separated by ";". */
  readonly expression: string;
  /** Every symbol but pi: its unit ("" for a pure number) and what it is. */
  readonly symbols: Readonly<Record<string, readonly [unit: Unit | "", words: string]>>;
  /** Named numbers: value, dimension as a product of SI base units ("s^2/m", "1"), and what it is. */
  readonly constants?: Readonly<Record<string, readonly [value: number, dimension: string, words: string]>>;
  readonly source: Source;
}

const problem = (sentence: string, at = 0): FormulaProblem => ({ at, sentence });

interface Explained {
  readonly known: ReadonlyMap<string, Dimension>;
  readonly problems: readonly FormulaProblem[];
}

function explained(formula: Formula): Explained {
  const known = new Map<string, Dimension>([["pi", {}]]);
  const problems: FormulaProblem[] = [];
  const add = (name: string, words: string, text: string): void => {
    if (known.has(name) || isFunctionName(name)) problems.push(problem(`"${name}" is explained twice.`));
    if (words.trim() === "") problems.push(problem(`"${name}" is explained by no words.`));
    const read = readDimension(text);
    known.set(name, read.ok ? read.dimension : {});
    if (!read.ok) problems.push(problem(`The dimension of "${name}": ${read.problem.sentence}`));
  };
  for (const [name, [unit, words]] of Object.entries(formula.symbols)) {
    add(name, words, unit === "" ? "1" : quantityDimensions[quantityOf(unit)]);
  }
  for (const [name, [value, text, words]] of Object.entries(formula.constants ?? {})) {
    add(name, words, text);
    if (!Number.isFinite(value)) problems.push(problem(`"${name}" has no value.`));
  }
  return { known, problems };
}

/**
 * What is wrong with a formula: it cannot be read, a symbol of it is not explained or one explained is not in it, or
 * its sides have different dimensions. Empty where nothing is.
 */
export function problemsOfFormula(formula: Formula): readonly FormulaProblem[] {
  const parsed = parse(formula.expression);
  if (!parsed.ok) return [parsed.problem];
  const { known, problems } = explained(formula);
  const found = [...problems];
  const used = new Set(
    parsed.equations.flatMap((equation) => sidesOf(equation).flatMap((side) => [...namesIn(side)])),
  );
  for (const name of known.keys()) {
    if (name !== "pi" && !used.has(name)) found.push(problem(`"${name}" is explained but not used.`));
  }
  for (const equation of parsed.equations) {
    const [relation] = equation.rest;
    if (relation === undefined) {
      found.push(problem("A formula is an equation: it needs two sides.", equation.first.at));
      continue;
    }
    const measured = commonDimension(sidesOf(equation), known, relation.at);
    if (!measured.ok) found.push(measured.problem);
  }
  return found;
}
