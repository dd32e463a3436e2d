import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { derived } from "#shared-lib/calculators/source.ts";
import { readDimension, writeDimension } from "#shared-lib/formulas/dimension.ts";
import { type Formula, problemsOfFormula } from "#shared-lib/formulas/formula.ts";
import { parse } from "#shared-lib/formulas/parse.ts";
import { spokenEquation } from "#shared-lib/formulas/spoken.ts";
import { equationNode, type MathNode } from "#shared-lib/formulas/typeset.ts";

const source = derived("a test");
const formula = (
  expression: string,
  symbols: Formula["symbols"],
  constants: Formula["constants"] = {},
): Formula => ({ name: "test", expression, symbols, constants, source });

const stop: Formula["symbols"] = {
  s: ["m", "distance"],
  v: ["m/s", "speed"],
  a: ["m/s²", "retardation"],
  j: ["m/s³", "jerk"],
};

const sentences = (one: Formula): string[] => problemsOfFormula(one).map(({ sentence }) => sentence);

/** Everything that is set, in order, with the shape of fractions, powers and low letters. */
function flat(node: MathNode): string {
  if (typeof node.children === "string") return node.children;
  const parts = node.children.map(flat);
  const shape = { mfrac: "/", msup: "^", msub: "_", msqrt: "√" }[node.tag as "mfrac"];
  return shape === undefined
    ? parts.join("")
    : `{${shape === "√" ? `√${parts.join("")}` : parts.join(shape)}}`;
}

function set(text: string): string {
  const parsed = parse(text);
  if (!parsed.ok) throw new Error(parsed.problem.sentence);
  return parsed.equations.map((equation) => flat(equationNode(equation))).join(" ; ");
}

function spoken(text: string): string {
  const parsed = parse(text);
  if (!parsed.ok) throw new Error(parsed.problem.sentence);
  return parsed.equations.map(spokenEquation).join("; ");
}

describe("reading", () => {
  test.each([
    ["s = v^2/(2*a", 12, "the formula ends"],
    ["s = 2 a", 6, "an operator is expected"],
    ["s = v § a", 6, "no sign of a formula"],
    ["s == v", 3, "a number, a symbol or a parenthesis"],
    ["s = f(v)", 4, '"f" is no function here'],
    ["s = max(v)", 4, "two or more values"],
    ["s = sqrt(v, a)", 4, "one value"],
    ["", 0, "the formula ends"],
    ["s = ;", 4, "a number, a symbol or a parenthesis"],
    [`s = ${"(".repeat(2000)}`, 1000, "at most 1000 signs"],
  ])("refused where it goes wrong, case %#", (text, at, words) => {
    const parsed = parse(text);
    expect(parsed.ok).toBe(false);
    if (parsed.ok) return;
    expect(parsed.problem.at).toBe(at);
    expect(parsed.problem.sentence).toContain(words);
  });

  test("never throws, whatever the text, and typesets and speaks what it reads", () => {
    const piece = fc.constantFrom(
      ..."abvstj_1 2 3.5 ( ( ) ) + - * / ^ = >= <= < > , ; sqrt exp sum max min mu abs".split(
        /(?<= )| (?=\S)/,
      ),
    );
    const nearly = fc.array(piece, { maxLength: 60 }).map((parts) => parts.join(""));
    let read = 0;
    fc.assert(
      fc.property(
        fc.oneof(fc.constantFrom("toString", "a = constructor"), fc.string({ unit: "binary" }), nearly),
        (text) => {
          const parsed = parse(text);
          if (!parsed.ok) {
            expect(parsed.problem.at).toBeGreaterThanOrEqual(0);
            expect(parsed.problem.at).toBeLessThanOrEqual(Math.max(text.length, 0));
            expect(parsed.problem.sentence).toMatch(/\.$/);
            return;
          }
          read += 1;
          for (const equation of parsed.equations) {
            expect(flat(equationNode(equation))).not.toBe("");
            expect(spokenEquation(equation)).not.toContain("undefined");
          }
          expect(problemsOfFormula(formula(text, {}))).toBeInstanceOf(Array);
        },
      ),
      { numRuns: 3000 },
    );
    expect(read).toBeGreaterThan(10);
    const deep = `a = ${"(".repeat(490)}b${")".repeat(490)}`;
    expect(parse(deep).ok).toBe(true);
    expect(parse(`a = ${"-".repeat(990)}b`).ok).toBe(true);
  });
});

describe("dimensions", () => {
  test("a right formula has no problem", () => {
    expect(sentences(formula("s = v^2/(2*a) + v*a/(2*j) - a^3/(24*j^2)", stop))).toEqual([]);
    const { s, v, j } = stop;
    expect(sentences(formula("s = v*sqrt(v/j); v > 0", { s, v, j } as Formula["symbols"]))).toEqual([]);
    expect(
      sentences(
        formula(
          "s >= k*v^2",
          { s: ["mm", "stroke"], v: ["m/s", "speed"] },
          { k: [0.0674, "s^2/m", "of the stroke"] },
        ),
      ),
    ).toEqual([]);
    expect(
      sentences(
        formula("T_1/T_2 <= exp(f*alpha)", {
          T_1: ["N", "one side"],
          T_2: ["kN", "other side"],
          f: ["", "friction factor"],
          alpha: ["°", "angle of wrap"],
        }),
      ),
    ).toEqual([]);
    expect(
      sentences(
        formula("s = max(min(v*t, 2*s_0), abs(s_0))*sin(pi/4)", {
          s: ["m", "way"],
          v: ["m/s", "speed"],
          t: ["min", "time"],
          s_0: ["mm", "way"],
        }),
      ),
    ).toEqual([]);
    expect(
      sentences(
        formula("v = (s^2*j/4)^(1/3)", { v: ["m/s", "speed"], s: ["m", "way"], j: ["m/s³", "jerk"] }),
      ),
    ).toEqual([]);
  });

  test.each([
    ["s = v^2/(2*j)", "The two sides have different dimensions: m and m·s."],
    ["s = v*a", "The two sides have different dimensions: m and m^2·s^-3."],
    ["s = v + a", '"+" joins different dimensions: m·s^-1 and m·s^-2.'],
    ["s = s*exp(v)", 'What "exp" is taken of must be a pure number, not m·s^-1.'],
    ["s = s*ln(a)", 'What "ln" is taken of must be a pure number, not m·s^-2.'],
    ["s = max(s, v)", '"max" takes different dimensions: m and m·s^-1.'],
    ["s = s*2^v", "An exponent must be a pure number, not m·s^-1."],
    ["s = 0.0674*v^2", "The two sides have different dimensions: m and m^2·s^-2."],
    ["s", "A formula is an equation: it needs two sides."],
    ["s = x", '"x" is not explained.'],
  ])("%s is refused", (expression, sentence) => {
    expect(sentences(formula(expression, stop)).filter((each) => !each.includes("not used"))).toContain(
      sentence,
    );
  });

  test("every symbol is explained once and used", () => {
    expect(sentences(formula("s = v^2/a", stop))).toEqual(['"j" is explained but not used.']);
    expect(sentences(formula("s = s*k", { s: ["m", "way"], k: ["", " "] }))).toEqual([
      '"k" is explained by no words.',
    ]);
    const twice = formula("s = s*k", { s: ["m", "way"], k: ["", "one"] }, { k: [1, "1", "other"] });
    expect(sentences(twice)).toEqual(['"k" is explained twice.']);
    const odd = formula("s = s*k", { s: ["m", "way"] }, { k: [Number.NaN, "mile", "odd"] });
    expect(sentences(odd)).toEqual(['The dimension of "k": "mile" is not explained.', '"k" has no value.']);
  });

  test("a dimension is a product of base units", () => {
    const read = (text: string) => {
      const found = readDimension(text);
      return found.ok ? writeDimension(found.dimension) : found.problem.sentence;
    };
    expect(read("kg*m^2/s^3")).toBe("kg·m^2·s^-3");
    expect(read("1")).toBe("a pure number");
    expect(read("m = s")).toContain("no product");
  });
});

describe("typesetting", () => {
  test("fractions, powers, low letters and Greek; parentheses only where they are needed", () => {
    expect(set("s = v^2/(2*a) - (a - b)*c")).toBe("s={{v^2}/2\u2062a}−(a−b)\u2062c");
    expect(set("mu >= e_up*2*3^(a+b)")).toBe("μ≥{e_up}·2·{3^a+b}");
    expect(set("a - (b - c) = -(a + b)")).toBe("a−(b−c)=−(a+b)");
    expect(set("(a/b)^2 = sqrt(x)")).toBe("{({a/b})^2}={√x}");
    expect(set("a <= sqrt(b/c)")).toBe("a≤√({b/c})");
    expect(set("Delta_U_n = abs(x) + sum(m_i*v_i^2)")).toBe("{ΔU_n}=|x|+∑{m_i}\u2062{{v_i}^2}");
    expect(set("f = mu/sin(gamma/2)")).toBe("f={μ/sin\u2061({γ/2})}");
  });

  test("said in words", () => {
    expect(spoken("s = v^2/(2*a) + v*t_r")).toBe(
      "s equals v squared over open 2 times a close plus v times t r",
    );
    expect(spoken("T_1/T_2 <= exp(f*alpha)")).toBe(
      "T 1 over T 2 is at most e to the power of open f times alpha close",
    );
    expect(spoken("a = max(b, c - d)*e")).toBe(
      "a equals open the largest of b and open c minus d close close times e",
    );
  });
});
