import { useState } from "react";
import type { Calculator } from "#shared-lib/calculators/calculator.ts";
import type { Field } from "#shared-lib/calculators/field.ts";
import type { Source, SourceStatus } from "#shared-lib/calculators/source.ts";
import { type UnitSystem, writeQuantity } from "#shared-lib/quantities.ts";
import { Button } from "../../ui/button.tsx";
import { RuledTitle } from "../../ui/ruled-title.tsx";
import { FormulaView } from "./formula-view.tsx";

interface DocumentationProps {
  readonly calculator: Calculator;
  readonly system: UnitSystem;
}

const standing: Readonly<Record<SourceStatus, string>> = {
  published: "published, as cited",
  "second-hand": "from notes on the clause: compare the current text",
  "from memory": "from memory: check against the current text",
  derived: "derived here",
  site: "the site's own",
  "common practice": "common practice, no source",
};

/** How the calculator works, read from its definition: formulas, where they are from, what is entered. */
export function Documentation({ calculator, system }: DocumentationProps) {
  return (
    <section className="bench-documentation region" aria-label="How it is computed">
      <RuledTitle>How it is computed</RuledTitle>
      <p>{calculator.purpose}</p>
      <div className="bench-formulas">
        {calculator.formulas.map((formula) => (
          <FormulaView key={formula.name} formula={formula} system={system} />
        ))}
      </div>
      <Sources sources={calculator.sources} />
      <Inputs fields={calculator.inputs} system={system} />
    </section>
  );
}

export function Sources({ sources }: { readonly sources: readonly Source[] }) {
  return (
    <>
      <h3>Sources</h3>
      <div className="scroll-frame">
        <table className="table" aria-label="Sources">
          <thead>
            <tr>
              <th scope="col">What</th>
              <th scope="col">Document and edition</th>
              <th scope="col">Clause</th>
              <th scope="col">How sure</th>
            </tr>
          </thead>
          <tbody>
            {sources.map((source) => (
              <tr key={`${source.document} ${source.clause} ${source.words}`}>
                <td>{source.words}</td>
                <td>
                  {source.document === ""
                    ? "none"
                    : `${source.document}${source.edition === "" ? "" : `:${source.edition}`}`}
                </td>
                <td>{source.clause === "" ? "none" : source.clause}</td>
                <td>{standing[source.status]}</td>
              </tr>
            ))}
          </tbody>
        </table>
      </div>
    </>
  );
}

function rangeOf(field: Field, system: UnitSystem): string {
  switch (field.kind) {
    case "number": {
      const [least, most] = field.range;
      const write = (value: number): string =>
        writeQuantity(value, field.unit, { digits: field.digits, system });
      return `${write(least)} to ${write(most)}`;
    }
    case "choice":
      return field.options.map((option) => option.words).join(", ");
    case "order":
      return field.items.map((item) => item.words).join(", ");
    case "table":
      return `${field.least} to ${field.most} rows of ${field.columns.map(({ label }) => label.toLowerCase()).join(", ")}`;
    case "text":
      return `words, at most ${field.longest} letters`;
  }
}

function Inputs({ fields, system }: { readonly fields: readonly Field[]; readonly system: UnitSystem }) {
  const [open, setOpen] = useState(false);
  return (
    <>
      <div>
        <Button kind="quiet" expanded={open} onPress={() => setOpen(!open)}>
          {open ? "Fold what is entered" : `All ${fields.length} inputs and what they mean`}
        </Button>
      </div>
      {open && <InputTable fields={fields} system={system} />}
    </>
  );
}

function InputTable({ fields, system }: { readonly fields: readonly Field[]; readonly system: UnitSystem }) {
  return (
    <div className="scroll-frame">
      <table className="table" aria-label="What is entered">
        <thead>
          <tr>
            <th scope="col">Input</th>
            <th scope="col">Allowed</th>
            <th scope="col">Meaning</th>
          </tr>
        </thead>
        <tbody>
          {fields.map((field) => (
            <tr key={field.key}>
              <td>{field.label}</td>
              <td>{rangeOf(field, system)}</td>
              <td className="soft">{field.help ?? ""}</td>
            </tr>
          ))}
        </tbody>
      </table>
    </div>
  );
}
