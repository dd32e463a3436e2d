/**
 * One small language for formulas: `s = v^2/(2*a) + v*a/(2*j_1); d >= v*t_r + s`. Operators + - * / ^, parentheses,
 * relations = >= <= < >, functions by name, subscripts behind an underscore, Greek letters by name. `at` is the
 * place in the text, counted from 0.
 */
export type Operator = "+" | "-" | "*" | "/" | "^";
export type Relation = "=" | ">=" | "<=" | "<" | ">";

export const functionNames = ["sqrt", "exp", "ln", "sin", "cos", "tan", "min", "max", "abs", "sum"] as const;
export type FunctionName = (typeof functionNames)[number];

export type Expression =
  | { readonly kind: "number"; readonly text: string; readonly at: number }
  | { readonly kind: "name"; readonly name: string; readonly at: number }
  | { readonly kind: "negative"; readonly of: Expression; readonly at: number }
  | {
      readonly kind: "operation";
      readonly operator: Operator;
      readonly left: Expression;
      readonly right: Expression;
      readonly at: number;
    }
  | {
      readonly kind: "function";
      readonly name: FunctionName;
      readonly of: readonly Expression[];
      readonly at: number;
    };

/** One expression, or several joined by relations: `a = b`, `a <= b <= c`. */
export interface Equation {
  readonly first: Expression;
  readonly rest: readonly { readonly relation: Relation; readonly side: Expression; readonly at: number }[];
}

/** What is wrong, and where. */
export interface FormulaProblem {
  readonly at: number;
  readonly sentence: string;
}

export type Parsed =
  | { readonly ok: true; readonly equations: readonly Equation[] }
  | { readonly ok: false; readonly problem: FormulaProblem };

/** Every name in an expression, in the order of their first appearance. */
export function namesIn(expression: Expression): ReadonlySet<string> {
  const found = new Set<string>();
  const visit = (part: Expression): void => {
    if (part.kind === "name") found.add(part.name);
    if (part.kind === "negative") visit(part.of);
    if (part.kind === "function") part.of.forEach(visit);
    if (part.kind !== "operation") return;
    visit(part.left);
    visit(part.right);
  };
  visit(expression);
  return found;
}

export const sidesOf = (equation: Equation): readonly Expression[] => [
  equation.first,
  ...equation.rest.map(({ side }) => side),
];
