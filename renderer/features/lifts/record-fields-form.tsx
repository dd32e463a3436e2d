import { NumberField } from "../../ui/number-field.tsx";
import { SelectField } from "../../ui/select-field.tsx";
import { TextArea, TextField } from "../../ui/text-field.tsx";
import {
  type RecordField,
  type RecordProblems,
  type RecordTexts,
  sectionsOf,
  unitOf,
} from "./record-fields.ts";

interface RecordFieldsFormProps {
  readonly fields: readonly RecordField[];
  readonly texts: RecordTexts;
  readonly problems: RecordProblems;
  readonly onChange: (key: string, text: string) => void;
  /** Without the titles of the sections, for a short form. */
  readonly plain?: boolean;
}

/** The fields of a record in their sections. */
export function RecordFieldsForm({ fields, plain = false, ...rest }: RecordFieldsFormProps) {
  if (plain) return <FieldGrid fields={fields} {...rest} />;
  return sectionsOf(fields).map((section) => (
    <section key={section.title} className="stack">
      <h3>{section.title}</h3>
      <FieldGrid fields={section.fields} {...rest} />
    </section>
  ));
}

function FieldGrid({ fields, texts, problems, onChange }: Omit<RecordFieldsFormProps, "plain">) {
  const isLong = fields.some((field) => field.kind === "text");
  return (
    <div className={isLong ? "fields-two" : "fields-three"}>
      {fields.map((field) => (
        <OneField
          key={field.key}
          field={field}
          text={texts[field.key] ?? ""}
          problem={problems[field.key]}
          onChange={(text) => onChange(field.key, text)}
        />
      ))}
    </div>
  );
}

interface OneFieldProps {
  readonly field: RecordField;
  readonly text: string;
  readonly problem: string | undefined;
  readonly onChange: (text: string) => void;
}

const notRecorded = "none";

function OneField({ field, text, problem, onChange }: OneFieldProps) {
  const common = {
    label: field.label,
    problem,
    ...(field.hint === undefined ? {} : { hint: field.hint }),
  };
  switch (field.kind) {
    case "number": {
      const unit = unitOf(field);
      return (
        <NumberField {...common} value={text} onChange={onChange} {...(unit === undefined ? {} : { unit })} />
      );
    }
    case "choice":
      return (
        <SelectField
          {...common}
          options={[
            { id: notRecorded, words: "not recorded" },
            ...(field.options ?? []).map(({ stored, words }) => ({ id: String(stored), words })),
          ]}
          value={text === "" ? notRecorded : text}
          onChange={(id) => onChange(id === notRecorded ? "" : id)}
        />
      );
    case "text":
      return <TextArea {...common} value={text} onChange={onChange} rows={3} />;
    case "day":
      return <TextField {...common} hint="as in 12 Mar 2025" value={text} onChange={onChange} />;
    default:
      return (
        <TextField
          {...common}
          type={field.kind === "telephone" ? "tel" : "text"}
          value={text}
          onChange={onChange}
        />
      );
  }
}
