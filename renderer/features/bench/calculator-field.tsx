import { type Field, type FieldValue, isNeeded } from "#shared-lib/calculators/field.ts";
import type { Comparison } from "#shared-lib/calculators/result.ts";
import type { TableRow } from "#shared-lib/calculators/table-field.ts";
import { type UnitSystem, unitIn } from "#shared-lib/quantities.ts";
import { Choice } from "../../ui/choice.tsx";
import { Mark } from "../../ui/mark.tsx";
import { NumberField } from "../../ui/number-field.tsx";
import { SelectField } from "../../ui/select-field.tsx";
import { TextField } from "../../ui/text-field.tsx";
import { type Entry, shownText } from "./entries.ts";
import { OrderListField } from "./order-list-field.tsx";
import { typedRows } from "./table-entries.ts";
import { TableField } from "./table-field.tsx";
import { unitSign } from "./unit-words.ts";
import type { BenchForm } from "./use-bench-form.ts";

interface CalculatorFieldProps {
  readonly field: Field;
  readonly fields: readonly Field[];
  readonly form: BenchForm;
  readonly system: UnitSystem;
  /** Sentence at the field, already held back while the person types. */
  readonly problem: string | undefined;
  readonly onEdit: (key: string) => void;
}

/** More options than these are a list to pick from; fewer stand side by side. */
const mostOptions = 5;
const narrowWords = 22;
const narrowLabel = 27;

/** One input of a calculator, whatever its kind. */
export function CalculatorField(props: CalculatorFieldProps) {
  const { field, form } = props;
  const comparison = form.result.comparisons.find(
    (one) => one.field === field.key && one.holds !== null && props.problem === undefined,
  );
  return (
    <div className={isWide(field) ? "bench-field bench-field-wide" : "bench-field"} data-field={field.key}>
      <Control {...props} />
      {comparison !== undefined && <OwnLimit comparison={comparison} />}
    </div>
  );
}

/** Takes the whole width of the form: choices with many words, and lists. */
export function isWide(field: Field): boolean {
  if (field.kind === "order" || field.kind === "table") return true;
  const { length } = field.label;
  if (field.kind !== "choice" || field.options.length > mostOptions) return length > narrowLabel;
  const words = field.options.map((option) => option.words).join("");
  return length > narrowLabel || field.options.length > 2 || words.length > narrowWords;
}

function OwnLimit({ comparison }: { readonly comparison: Comparison }) {
  const { holds, word, rest } = comparison;
  const shown = `${word.charAt(0).toUpperCase()}${word.slice(1)}`;
  return (
    <p className="own-limit">
      <Mark kind={holds === true ? "flush" : "stepped"} word={shown} pencil={holds === false} strong />
      <span> {rest}</span>
    </p>
  );
}

function Control({ field, fields, form, system, problem, onEdit }: CalculatorFieldProps) {
  const entry = form.entries[field.key];
  const filled = form.filled.input[field.key];
  const change = (next: Entry): void => {
    onEdit(field.key);
    form.set(field.key, next);
  };
  const from = entry === undefined ? form.filled.from[field.key] : undefined;
  const common = {
    label: field.label,
    ...(isEmptyAndNeeded(field, fields, form) ? { hint: "needed" } : {}),
    problem,
    ...(from === undefined || from === "" ? {} : { from }),
  };
  switch (field.kind) {
    case "number": {
      const unit = unitIn(system, field.unit);
      const sign = unitSign(unit);
      return (
        <NumberField
          {...common}
          value={shownText(field, filled ?? field.start, entry, system)}
          onChange={(text) => change({ kind: "number", text, unit })}
          {...(sign === undefined ? {} : { unit: sign })}
        />
      );
    }
    case "text":
      return (
        <TextField
          {...common}
          value={textOf(form.input[field.key])}
          onChange={(text) =>
            change({ kind: "value", value: text === "" ? null : text.slice(0, field.longest) })
          }
        />
      );
    case "choice": {
      const pick = { ...common, options: field.options, value: textOf(form.input[field.key]) || null };
      const onChange = (value: string): void => change({ kind: "value", value });
      return field.options.length > mostOptions ? (
        <SelectField {...pick} onChange={onChange} />
      ) : (
        <Choice {...pick} onChange={onChange} />
      );
    }
    case "order":
      return (
        <OrderListField
          {...common}
          field={field}
          value={listOf(form.input[field.key])}
          onChange={(value) => change({ kind: "value", value })}
        />
      );
    case "table":
      return (
        <TableField
          {...common}
          {...{ field, system }}
          rows={
            entry?.kind === "table"
              ? entry.rows
              : typedRows(field, (filled ?? []) as readonly TableRow[], system)
          }
          onChange={(rows) => change({ kind: "table", rows })}
        />
      );
  }
}

/** Most inputs of a calculator may stay empty, so the few that may not are named instead. */
function isEmptyAndNeeded(field: Field, fields: readonly Field[], form: BenchForm): boolean {
  return form.input[field.key] === undefined && isNeeded(field, fields, form.input);
}

const textOf = (value: FieldValue | undefined): string => (typeof value === "string" ? value : "");
const listOf = (value: FieldValue | undefined): readonly string[] | undefined =>
  Array.isArray(value) ? (value as readonly string[]) : undefined;
