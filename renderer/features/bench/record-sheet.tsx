import type { Calculator } from "#shared-lib/calculators/calculator.ts";
import { type Field, type FieldValue, isShown, type TableField } from "#shared-lib/calculators/field.ts";
import { writeSource } from "#shared-lib/calculators/source.ts";
import type { TableRow } from "#shared-lib/calculators/table-field.ts";
import { formatDate } from "#shared-lib/format.ts";
import { type UnitSystem, unitIn } from "#shared-lib/quantities.ts";
import { PrintSheet } from "../../ui/print-sheet.tsx";
import { useProgram } from "../../use-program.ts";
import { DrawingsOfResult, type EarlierDrawings } from "./drawing-of-result.tsx";
import { shownText } from "./entries.ts";
import { shownCell, typedRows } from "./table-entries.ts";
import { unitSign } from "./unit-words.ts";
import type { BenchForm } from "./use-bench-form.ts";
import { useOnePage } from "./use-one-page.ts";
import { ComputedValues, VerdictView } from "./verdict-view.tsx";

interface RecordSheetProps {
  readonly calculator: Calculator;
  readonly form: BenchForm;
  readonly system: UnitSystem;
  readonly levelWords: string;
  readonly landingWords: string;
  readonly earlier: EarlierDrawings | undefined;
  /** "saved 10:42" or "not saved" */
  readonly savedWords: string;
}

/** One page for the file: what was entered, what follows, from which source, drawn as on the screen. */
export function RecordSheet(props: RecordSheetProps) {
  const { calculator, form, system, levelWords, landingWords, earlier, savedWords } = props;
  const { device, person } = useProgram();
  const page = useOnePage();
  const { lift, result } = form;
  const fields = calculator.inputs.filter((field) => isShown(field, calculator.inputs, form.input));
  const entered = fields.flatMap((field) => {
    const words = enteredWords(field, form, system);
    return words === "" ? [] : [{ key: field.key, label: field.label, words }];
  });
  return (
    <PrintSheet
      title={calculator.name}
      company={device.company?.name ?? ""}
      {...(lift === undefined ? {} : { site: lift.site.name, lift: `${lift.lift.name}${landingWords}` })}
      date={formatDate(new Date())}
      who={person?.name ?? "nobody chosen"}
      page="1 of 1"
    >
      <div className="bench-record" key={page.scale} ref={page.ref} style={{ zoom: page.scale }}>
        <p className="label soft">{`This result is ${savedWords}.`}</p>
        <VerdictView result={result} />
        <h2>Entered</h2>
        <dl className="bench-values">
          {entered.map((one) => (
            <div key={one.key}>
              <dt>{one.label}</dt>
              <dd>{one.words}</dd>
            </div>
          ))}
        </dl>
        <h2>Computed</h2>
        <ComputedValues result={result} />
        <DrawingsOfResult
          drawings={result.drawings}
          system={system}
          levelWords={levelWords}
          earlier={earlier}
          compact
          fileName={calculator.id}
        />
        <p className="label">
          <b>Sources.</b> {calculator.sources.map(writeSource).join("; ")}.
        </p>
        <p className="label">
          <b>Caution.</b> {calculator.cautions.join(" ")}
        </p>
      </div>
    </PrintSheet>
  );
}

/** Rows in one line, cells by comma, rows by semicolon. */
function tableWords(field: TableField, value: FieldValue | undefined, system: UnitSystem): string {
  if (!Array.isArray(value)) return "";
  const rows = typedRows(field, value as readonly TableRow[], system);
  const heads = field.columns.map(({ label }) => label.toLowerCase()).join(", ");
  const lines = rows.map((row) =>
    field.columns.map((column) => shownCell(column, row[column.key], system) || "none").join(", "),
  );
  return `${heads}: ${lines.join("; ")}`;
}

/** A field as it was entered, in words; empty where nothing was. */
function enteredWords(field: Field, form: BenchForm, system: UnitSystem): string {
  const value = form.input[field.key];
  switch (field.kind) {
    case "number": {
      const text = shownText(
        field,
        form.filled.input[field.key] ?? field.start,
        form.entries[field.key],
        system,
      );
      const sign = unitSign(unitIn(system, field.unit));
      return text === "" || sign === undefined ? text : `${text}\u00a0${sign}`;
    }
    case "choice":
      return field.options.find((option) => option.id === value)?.words ?? "";
    case "text":
      return typeof value === "string" ? value : "";
    case "table":
      return tableWords(field, value, system);
    case "order": {
      if (!Array.isArray(value)) return "";
      const words = (value as readonly string[]).map(
        (id) => field.items.find((item) => item.id === id)?.words ?? id,
      );
      return words.length === 0 ? "nothing came" : words.join(", ");
    }
  }
}
