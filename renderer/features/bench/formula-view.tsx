import { createElement, type ReactNode } from "react";
import { writeSource } from "#shared-lib/calculators/source.ts";
import type { Equation } from "#shared-lib/formulas/expression.ts";
import type { Formula } from "#shared-lib/formulas/formula.ts";
import { parse } from "#shared-lib/formulas/parse.ts";
import { spokenEquation } from "#shared-lib/formulas/spoken.ts";
import { equationNode, type MathNode, symbolNode } from "#shared-lib/formulas/typeset.ts";
import { type Unit, type UnitSystem, unitIn } from "#shared-lib/quantities.ts";
import { unitSign } from "./unit-words.ts";

interface FormulaViewProps {
  readonly formula: Formula;
  readonly system: UnitSystem;
}

/** One formula typeset, each equation on a line of its own, with its symbols and where it is from. */
export function FormulaView({ formula, system }: FormulaViewProps) {
  const parsed = parse(formula.expression);
  return (
    <section>
      <h3>{formula.name}</h3>
      {parsed.ok ? (
        parsed.equations.map((equation) => (
          <EquationLine key={spokenEquation(equation)} equation={equation} />
        ))
      ) : (
        <p className="formula">{formula.expression}</p>
      )}
      <dl className="formula-symbols label">
        {Object.entries(formula.symbols).map(([name, [unit, words]]) => (
          <SymbolLine key={name} name={name} words={words} unit={unitWords(unit, system)} />
        ))}
        {Object.entries(formula.constants ?? {}).map(([name, [value, dimension, words]]) => (
          <SymbolLine key={name} name={name} words={words} unit={constantWords(value, dimension)} />
        ))}
      </dl>
      <p className="label soft">{writeSource(formula.source)}</p>
    </section>
  );
}

/** Chromium sets MathML itself; who hears the page gets the equation in words. */
function EquationLine({ equation }: { readonly equation: Equation }) {
  return (
    <p className="formula">
      {createElement(
        "math",
        { "aria-label": spokenEquation(equation), display: "block" },
        mathElement(equationNode(equation), "equation"),
      )}
    </p>
  );
}

interface SymbolLineProps {
  readonly name: string;
  readonly words: string;
  readonly unit: string;
}

function SymbolLine({ name, words, unit }: SymbolLineProps) {
  return (
    <div>
      <dt>
        {createElement(
          "math",
          { "aria-label": name.replaceAll("_", " ") },
          mathElement(symbolNode(name), name),
        )}
      </dt>
      <dd>
        {words}
        {unit !== "" && <span className="soft">{`, ${unit}`}</span>}
      </dd>
    </div>
  );
}

function mathElement({ tag, attributes, children }: MathNode, key: string): ReactNode {
  const inner =
    typeof children === "string"
      ? children
      : children.map((child, index) => mathElement(child, `${key} ${index}`));
  return createElement(tag, { ...attributes, key }, inner);
}

function unitWords(unit: Unit | "", system: UnitSystem): string {
  return unit === "" ? "" : (unitSign(unitIn(system, unit)) ?? "");
}

/** A pure number's value stands in the formula's own figures; one with a dimension is written in SI. */
function constantWords(value: number, dimension: string): string {
  const si = dimension === "1" ? "" : ` ${dimension.replaceAll("*", "·")}`;
  return `${value}${si}`;
}
