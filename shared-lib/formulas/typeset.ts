import type { Equation, Expression, Relation } from "./expression.ts";

/** A node of MathML as plain data; a text is a leaf. */
export interface MathNode {
  readonly tag: "mrow" | "mi" | "mn" | "mo" | "mtext" | "mfrac" | "msup" | "msub" | "msqrt";
  readonly attributes?: Readonly<Record<string, string>>;
  readonly children: readonly MathNode[] | string;
}

/** A map, because a symbol may be called as a thing every object has. */
const greek = new Map(
  Object.entries({
    alpha: "α",
    beta: "β",
    gamma: "γ",
    delta: "δ",
    epsilon: "ε",
    zeta: "ζ",
    eta: "η",
    theta: "θ",
    kappa: "κ",
    lambda: "λ",
    mu: "μ",
    nu: "ν",
    xi: "ξ",
    pi: "π",
    rho: "ρ",
    sigma: "σ",
    tau: "τ",
    phi: "φ",
    chi: "χ",
    psi: "ψ",
    omega: "ω",
    Delta: "Δ",
    Sigma: "Σ",
    Phi: "Φ",
    Omega: "Ω",
  }),
);

const relationSigns: Readonly<Record<Relation, string>> = {
  "=": "=",
  ">=": "≥",
  "<=": "≤",
  "<": "<",
  ">": ">",
};

const leaf = (tag: MathNode["tag"], text: string, attributes?: MathNode["attributes"]): MathNode => ({
  tag,
  children: text,
  ...(attributes === undefined ? {} : { attributes }),
});
const row = (...children: readonly MathNode[]): MathNode => ({ tag: "mrow", children });
const fenced = (open: string, inner: MathNode, close: string): MathNode =>
  row(leaf("mo", open), inner, leaf("mo", close));
const inParentheses = (inner: MathNode): MathNode => fenced("(", inner, ")");

function letter(text: string): MathNode {
  if (/^\d+$/.test(text)) return leaf("mn", text);
  const sign = greek.get(text) ?? text;
  return sign.length > 1 ? leaf("mtext", sign) : leaf("mi", sign);
}

/** "j_1" is j with a low 1, "Delta_U" is ΔU, "Delta_U_n" is ΔU with a low n. */
export function symbolNode(name: string): MathNode {
  const parts = name.split("_");
  const isChange = parts[0] === "Delta" && parts.length > 1;
  const [main = "", ...low] = isChange ? parts.slice(1) : parts;
  const head = isChange ? row(leaf("mi", "Δ"), letter(main)) : letter(main);
  if (low.length === 0) return head;
  const words = low.join(" ");
  return { tag: "msub", children: [head, letter(words)] };
}

/** How tightly an expression holds together: what is looser than its place stands in parentheses. */
function bindingOf(expression: Expression): number {
  if (expression.kind === "negative") return 1;
  if (expression.kind !== "operation") return 4;
  return { "+": 1, "-": 1, "*": 2, "/": 4, "^": 3 }[expression.operator];
}

const held = (expression: Expression, least: number): MathNode =>
  bindingOf(expression) < least ? inParentheses(expressionNode(expression)) : expressionNode(expression);

/** A number after another factor needs a dot; a symbol follows with a thin gap. */
const needsDot = (right: Expression): boolean =>
  right.kind === "number" ||
  (right.kind === "operation" && ["*", "^"].includes(right.operator) && needsDot(right.left));

function operationNode(expression: Expression & { kind: "operation" }): MathNode {
  const { operator, left, right } = expression;
  switch (operator) {
    case "+":
      return row(held(left, 1), leaf("mo", "+"), held(right, right.kind === "negative" ? 2 : 1));
    case "-":
      return row(held(left, 1), leaf("mo", "−"), held(right, 2));
    case "*": {
      const sign = needsDot(right)
        ? leaf("mo", "·")
        : leaf("mo", "\u2062", { lspace: "0.1em", rspace: "0.1em" });
      return row(held(left, 2), sign, held(right, 2));
    }
    case "/":
      return { tag: "mfrac", children: [expressionNode(left), expressionNode(right)] };
    case "^": {
      const base = left.kind === "name" || left.kind === "number" ? expressionNode(left) : null;
      return { tag: "msup", children: [base ?? inParentheses(expressionNode(left)), expressionNode(right)] };
    }
  }
}

const hasFraction = ({ tag, children }: MathNode): boolean =>
  tag === "mfrac" || (typeof children !== "string" && children.some(hasFraction));

function functionNode({ name, of }: Expression & { kind: "function" }): MathNode {
  const parts = of.map(expressionNode);
  const first = parts[0] ?? row();
  switch (name) {
    case "sqrt":
      // Without a font made for formulas the root sign does not grow: over a fraction it would seem to end at its bar.
      return hasFraction(first)
        ? row(leaf("mo", "√"), inParentheses(first))
        : { tag: "msqrt", children: [first] };
    case "abs":
      return fenced("|", first, "|");
    case "exp":
      return { tag: "msup", children: [leaf("mi", "e"), first] };
    case "sum":
      return row(leaf("mo", "∑"), held(of[0] as Expression, 2));
    default: {
      const listed = parts.flatMap((part, index) => (index === 0 ? [part] : [leaf("mo", ","), part]));
      return row(leaf("mi", name), leaf("mo", "\u2061"), inParentheses(row(...listed)));
    }
  }
}

export function expressionNode(expression: Expression): MathNode {
  switch (expression.kind) {
    case "number":
      return leaf("mn", expression.text);
    case "name":
      return symbolNode(expression.name);
    case "negative":
      return row(leaf("mo", "−", { form: "prefix" }), held(expression.of, 2));
    case "operation":
      return operationNode(expression);
    case "function":
      return functionNode(expression);
  }
}

/** An equation as MathML. */
export function equationNode(equation: Equation): MathNode {
  return row(
    expressionNode(equation.first),
    ...equation.rest.flatMap(({ relation, side }) => [
      leaf("mo", relationSigns[relation]),
      expressionNode(side),
    ]),
  );
}
