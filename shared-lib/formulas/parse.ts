import {
  type Equation,
  type Expression,
  type FormulaProblem,
  type FunctionName,
  functionNames,
  type Operator,
  type Parsed,
  type Relation,
} from "./expression.ts";

/** Longer text is refused, so that no text can nest deeper than a machine can follow. */
const longest = 1000;

interface Token {
  readonly kind: "number" | "name" | "sign" | "end";
  readonly text: string;
  readonly at: number;
}

const pattern = /(\d+(?:\.\d+)?)|([A-Za-z]+(?:_[A-Za-z0-9]+)*)|(>=|<=|[-+*/^()=<>,;])/y;
const relations: readonly string[] = ["=", ">=", "<=", "<", ">"];

/** Thrown inside this file only; `parse` answers it. */
class Misread extends Error {
  readonly problem: FormulaProblem;
  constructor(at: number, sentence: string) {
    super(sentence);
    this.problem = { at, sentence };
  }
}

function tokensOf(text: string): Token[] {
  const tokens: Token[] = [];
  let at = 0;
  while (at < text.length) {
    if (/\s/.test(text.charAt(at))) {
      at += 1;
      continue;
    }
    pattern.lastIndex = at;
    const match = pattern.exec(text);
    if (match === null) throw new Misread(at, `"${text.charAt(at)}" is no sign of a formula.`);
    const kind = match[1] !== undefined ? "number" : match[2] !== undefined ? "name" : "sign";
    tokens.push({ kind, text: match[0], at });
    at += match[0].length;
  }
  return [...tokens, { kind: "end", text: "", at: text.length }];
}

class Reader {
  private readonly tokens: readonly Token[];
  private next = 0;

  constructor(text: string) {
    this.tokens = tokensOf(text);
  }

  private get token(): Token {
    return this.tokens[this.next] as Token;
  }

  private take(...signs: readonly string[]): Token | null {
    const { token } = this;
    if (token.kind !== "sign" || !signs.includes(token.text)) return null;
    this.next += 1;
    return token;
  }

  private expect(sign: string): void {
    if (this.take(sign) === null) throw this.misread(`Here "${sign}" is expected`);
  }

  private misread(words: string): Misread {
    const { kind, text, at } = this.token;
    return new Misread(at, kind === "end" ? `${words}, but the formula ends.` : `${words}, not "${text}".`);
  }

  equations(): Equation[] {
    const found = [this.equation()];
    while (this.take(";") !== null) found.push(this.equation());
    if (this.token.kind !== "end") throw this.misread("Here an operator is expected");
    return found;
  }

  private equation(): Equation {
    const first = this.sum();
    const rest: { relation: Relation; side: Expression; at: number }[] = [];
    for (let sign = this.take(...relations); sign !== null; sign = this.take(...relations)) {
      rest.push({ relation: sign.text as Relation, side: this.sum(), at: sign.at });
    }
    return { first, rest };
  }

  private sum(): Expression {
    let left = this.product();
    for (let sign = this.take("+", "-"); sign !== null; sign = this.take("+", "-")) {
      left = operation(sign, left, this.product());
    }
    return left;
  }

  private product(): Expression {
    let left = this.signed();
    for (let sign = this.take("*", "/"); sign !== null; sign = this.take("*", "/")) {
      left = operation(sign, left, this.signed());
    }
    return left;
  }

  private signed(): Expression {
    const minus = this.take("-");
    return minus === null ? this.power() : { kind: "negative", of: this.signed(), at: minus.at };
  }

  private power(): Expression {
    const base = this.single();
    const sign = this.take("^");
    return sign === null ? base : operation(sign, base, this.signed());
  }

  private single(): Expression {
    const { token } = this;
    if (this.take("(") !== null) {
      const inner = this.sum();
      this.expect(")");
      return inner;
    }
    if (token.kind === "number") {
      this.next += 1;
      return { kind: "number", text: token.text, at: token.at };
    }
    if (token.kind === "name") {
      this.next += 1;
      return this.take("(") === null ? { kind: "name", name: token.text, at: token.at } : this.called(token);
    }
    throw this.misread("Here a number, a symbol or a parenthesis is expected");
  }

  private called({ text, at }: Token): Expression {
    if (!functionNames.some((name) => name === text)) {
      throw new Misread(at, `"${text}" is no function here. A product needs "*".`);
    }
    const name = text as FunctionName;
    const of = [this.sum()];
    while (this.take(",") !== null) of.push(this.sum());
    this.expect(")");
    const many = name === "min" || name === "max";
    if (many ? of.length < 2 : of.length > 1) {
      throw new Misread(at, `"${name}" takes ${many ? "two or more values" : "one value"}.`);
    }
    return { kind: "function", name, of, at };
  }
}

const operation = (sign: Token, left: Expression, right: Expression): Expression => ({
  kind: "operation",
  operator: sign.text as Operator,
  left,
  right,
  at: sign.at,
});

/** Reads one or several equations separated by ";". Total: whatever the text, it answers and never throws. */
export function parse(text: string): Parsed {
  if (text.length > longest) {
    return { ok: false, problem: { at: longest, sentence: `A formula has at most ${longest} signs.` } };
  }
  try {
    return { ok: true, equations: new Reader(text).equations() };
  } catch (error) {
    if (error instanceof Misread) return { ok: false, problem: error.problem };
    throw error;
  }
}
