import type { Equation, Expression, Operator, Relation } from "./expression.ts";

const relationWords: Readonly<Record<Relation, string>> = {
  "=": "equals",
  ">=": "is at least",
  "<=": "is at most",
  "<": "is less than",
  ">": "is more than",
};

const operatorWords: Readonly<Record<Operator, string>> = {
  "+": "plus",
  "-": "minus",
  "*": "times",
  "/": "over",
  "^": "to the power of",
};

const symbolWords = (name: string): string => name.replaceAll("_", " ");

const isSingle = (expression: Expression): boolean => {
  if (expression.kind !== "function") return expression.kind === "name" || expression.kind === "number";
  return !["min", "max", "sum"].includes(expression.name);
};

/** Whatever is not a single symbol is named between "open" and "close", so that it can only be heard one way. */
const grouped = (expression: Expression): string =>
  isSingle(expression) || isPowerOfSingle(expression)
    ? spokenExpression(expression)
    : `open ${spokenExpression(expression)} close`;

const isPowerOfSingle = (expression: Expression): boolean =>
  expression.kind === "operation" && expression.operator === "^" && isSingle(expression.left);

function spokenOperation({ operator, left, right }: Expression & { kind: "operation" }): string {
  if (operator === "^") {
    const power = right.kind === "number" ? right.text : "";
    if (power === "2") return `${grouped(left)} squared`;
    if (power === "3") return `${grouped(left)} cubed`;
  }
  const isSum = operator === "+" || operator === "-";
  const isProduct = (side: Expression): boolean =>
    side.kind === "operation" && (side.operator === "*" || side.operator === "/" || side.operator === "^");
  const sameLeft = left.kind === "operation" && (isSum || (operator === "*" && left.operator === "*"));
  const first = sameLeft ? spokenExpression(left) : grouped(left);
  const second = isSum && isProduct(right) ? spokenExpression(right) : grouped(right);
  return `${first} ${operatorWords[operator]} ${second}`;
}

function spokenFunction({ name, of }: Expression & { kind: "function" }): string {
  const [first] = of;
  if (first === undefined) return name;
  switch (name) {
    case "sqrt":
      return `the square root of ${grouped(first)}`;
    case "abs":
      return `the amount of ${grouped(first)}`;
    case "exp":
      return `e to the power of ${grouped(first)}`;
    case "ln":
      return `the natural logarithm of ${grouped(first)}`;
    case "sum":
      return `the sum of all ${grouped(first)}`;
    case "min":
    case "max":
      return `the ${name === "min" ? "least" : "largest"} of ${of.map(grouped).join(" and ")}`;
    default:
      return `the ${{ sin: "sine", cos: "cosine", tan: "tangent" }[name]} of ${grouped(first)}`;
  }
}

export function spokenExpression(expression: Expression): string {
  switch (expression.kind) {
    case "number":
      return expression.text;
    case "name":
      return symbolWords(expression.name);
    case "negative":
      return `minus ${grouped(expression.of)}`;
    case "operation":
      return spokenOperation(expression);
    case "function":
      return spokenFunction(expression);
  }
}

/** An equation in words, for who hears it. */
export function spokenEquation(equation: Equation): string {
  return [
    spokenExpression(equation.first),
    ...equation.rest.flatMap(({ relation, side }) => [relationWords[relation], spokenExpression(side)]),
  ].join(" ");
}
