import type { ImportMapping } from "#shared-lib/contract/import.ts";
import type { ImportField } from "#shared-lib/import/import-columns.ts";
import { Choice } from "../../ui/choice.tsx";
import { RuledTitle } from "../../ui/ruled-title.tsx";
import { SelectField } from "../../ui/select-field.tsx";
import { count, dateFormWords, delimiterWords, fieldWords, liftFields } from "./import-words.ts";
import type { TableImport } from "./use-table-import.ts";

const noColumn = "none";

/** What the file is, and which of its columns is what. */
export function FoundPart({ work }: { readonly work: TableImport }) {
  const { chosen, look, mapped, settle } = work;
  if (!chosen || !look || !mapped) return null;
  const { mapping, dateForms } = mapped;
  const fields = (Object.keys(fieldWords) as ImportField[]).filter(
    (field) => mapping.kind === "callouts" || liftFields.includes(field),
  );
  return (
    <section className="stack">
      <RuledTitle count={count(look.rows.length, "row")}>What was found</RuledTitle>
      <p>
        <b>{chosen.name}</b>: {foundWords(chosen.table)}. Columns are named in line {look.headerRow}.
      </p>
      <Choice
        label="The rows are"
        options={[
          { id: "callouts", words: "Callouts" },
          { id: "lifts", words: "Sites and lifts alone" },
        ]}
        value={mapping.kind}
        onChange={(kind) => settle({ kind })}
      />
      <div className="import-columns">
        {fields.map((field) => (
          <ColumnField key={field} field={field} work={work} mapping={mapping} />
        ))}
      </div>
      {mapping.kind === "callouts" && dateForms.length > 1 && (
        <SelectField
          label="The dates are written as"
          hint="They can be read in several ways. Look at a day you know."
          options={dateForms.map((form) => ({ id: form, words: dateFormWords[form] }))}
          value={mapped.openDateForms.length > 0 ? null : mapping.dateForm}
          onChange={(dateForm) => settle({ dateForm })}
        />
      )}
    </section>
  );
}

function ColumnField(props: {
  readonly field: ImportField;
  readonly work: TableImport;
  readonly mapping: ImportMapping;
}) {
  const { field, work, mapping } = props;
  const columns = work.look?.columns ?? [];
  const label = mapping.columns[field];
  const column = columns.find((one) => one.label === label);
  const samples = column?.samples.join(" · ");
  return (
    <SelectField
      label={fieldWords[field]}
      {...(samples ? { hint: samples } : {})}
      options={[
        { id: noColumn, words: "not in this table" },
        ...columns.map((one) => ({ id: one.label, words: one.label })),
      ]}
      value={label ?? noColumn}
      onChange={(id) => {
        const { [field]: _before, ...others } = mapping.columns;
        work.settle({ columns: id === noColumn ? others : { ...others, [field]: id } });
      }}
    />
  );
}

function foundWords({
  form,
  encoding,
  delimiter,
  sheets,
}: NonNullable<TableImport["chosen"]>["table"]): string {
  if (form === "XLSX") return sheets.length > 1 ? `a workbook; its first filled sheet is read` : "a workbook";
  return `text in ${encoding}, columns parted by ${delimiter ? delimiterWords[delimiter] : ""}`;
}
