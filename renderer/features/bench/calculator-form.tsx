import { type FocusEvent, type RefObject, useState } from "react";
import type { Calculator } from "#shared-lib/calculators/calculator.ts";
import { type Field, isShown } from "#shared-lib/calculators/field.ts";
import type { UnitSystem } from "#shared-lib/quantities.ts";
import { Caution } from "../../ui/caution.tsx";
import { CalculatorField } from "./calculator-field.tsx";
import { unclearProblem } from "./entries.ts";
import { fieldGroups } from "./field-groups.ts";
import type { BenchForm } from "./use-bench-form.ts";
import type { SaveResult } from "./use-save-result.ts";

interface CalculatorFormProps {
  readonly calculator: Calculator;
  readonly form: BenchForm;
  readonly system: UnitSystem;
  readonly saving: SaveResult;
  readonly formRef: RefObject<HTMLFormElement | null>;
}

const fieldOf = (target: EventTarget | null): Element | null =>
  target instanceof Element ? target.closest("[data-field]") : null;

/** The inputs of one calculator as its definition says; a sentence stands at a field once the person has left it. */
export function CalculatorForm({ calculator, form, system, saving, formRef }: CalculatorFormProps) {
  const [editing, setEditing] = useState<string | null>(null);
  const [helped, setHelped] = useState<string | null>(null);
  const shown = calculator.inputs.filter((field) => isShown(field, calculator.inputs, form.input));
  const problemAt = (field: Field): string | undefined => {
    const { asked, stoppedAt } = saving;
    if (field.key === editing && field.key !== stoppedAt) return undefined;
    const found = form.result.problems.find((problem) => problem.field === field.key)?.sentence;
    const unclear = unclearProblem(field, form.entries[field.key]);
    const missing = asked && form.result.missing.includes(field.key);
    return unclear ?? found ?? (missing ? "Still needed. Nothing is saved without it." : undefined);
  };
  const edited = (key: string): void => {
    setEditing(key);
    saving.forgetStop();
  };
  const left = (event: FocusEvent): void => {
    const from = fieldOf(event.target);
    if (from !== fieldOf(event.relatedTarget)) setEditing(null);
  };
  const helpField = shown.find((field) => field.key === helped);
  return (
    <form
      className="bench-in"
      aria-label="What is entered"
      ref={formRef}
      onSubmit={(event) => event.preventDefault()}
      onBlur={left}
      onFocus={(event) => setHelped(fieldOf(event.target)?.getAttribute("data-field") ?? null)}
    >
      {fieldGroups(shown).map((group) => (
        <fieldset key={group.key} className="bench-group">
          <legend className={group.name === undefined ? "seen-by-reader-only" : "bench-legend"}>
            {group.name ?? "Values"}
          </legend>
          {group.fields.map((field) => (
            <CalculatorField
              key={`${field.key} ${form.round}`}
              field={field}
              fields={calculator.inputs}
              form={form}
              system={system}
              problem={problemAt(field)}
              onEdit={edited}
            />
          ))}
        </fieldset>
      ))}
      <Caution>{calculator.cautions.join(" ")}</Caution>
      <p className="bench-help label" role="status">
        {helpField?.help !== undefined && (
          <>
            <b>{helpField.label}:</b> {helpField.help}
          </>
        )}
      </p>
    </form>
  );
}
