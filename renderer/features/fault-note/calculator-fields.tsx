import type { Field } from "#shared-lib/calculators/field.ts";
import { calculatorById, calculators } from "#shared-lib/calculators/registry.ts";
import { readNumber } from "#shared-lib/number-words.ts";
import { fromSi, toSi } from "#shared-lib/quantities.ts";
import { Button } from "../../ui/button.tsx";
import { NumberField } from "../../ui/number-field.tsx";
import { SelectField } from "../../ui/select-field.tsx";
import { TextField } from "../../ui/text-field.tsx";
import { EntryList } from "./list-editor.tsx";
import type { NoteFieldsProps } from "./note-fields.tsx";
import { changed, type FormCalculator, newKey, type Preset } from "./note-form.ts";

const calculatorOptions = calculators.map(({ id, name }) => ({ id, words: name }));

/** Calculators the note leads to, each with why and with the inputs it presets. */
export function CalculatorFields({ form, onChange, problems }: NoteFieldsProps) {
  const links = form.calculators;
  const setLinks = (next: readonly FormCalculator[]) => onChange({ calculators: next });
  return (
    <EntryList
      one="Calculator"
      items={links}
      onItems={setLinks}
      addWord="Add a calculator"
      most={10}
      make={() => ({ key: newKey(), id: "", why: "", preset: {} })}
    >
      {(link, index) => (
        <>
          <div className="fields-two">
            <SelectField
              label={`Calculator ${index + 1}`}
              options={calculatorOptions}
              // One of a later version of the program stays as it is.
              none={link.id === "" ? "Choose" : link.id}
              value={link.id}
              onChange={(id) => setLinks(changed(links, index, { id, preset: {} }))}
              problem={problems.get(`calculators.${index}.id`)}
            />
            <TextField
              label="Why"
              optional
              value={link.why}
              onChange={(why) => setLinks(changed(links, index, { why }))}
              problem={problems.get(`calculators.${index}.why`)}
            />
          </div>
          <PresetFields
            link={link}
            problem={(key) => problems.get(`calculators.${index}.preset.${key}`)}
            onPreset={(preset) => setLinks(changed(links, index, { preset }))}
          />
        </>
      )}
    </EntryList>
  );
}

interface PresetFieldsProps {
  readonly link: FormCalculator;
  readonly problem: (key: string) => string | undefined;
  readonly onPreset: (preset: Preset) => void;
}

function PresetFields({ link, problem, onPreset }: PresetFieldsProps) {
  const inputs = calculatorById(link.id)?.inputs ?? [];
  const set = Object.keys(link.preset);
  const free = inputs.filter(
    (field) => field.kind !== "order" && field.kind !== "table" && !set.includes(field.key),
  );
  return (
    <>
      {set.map((key) => (
        <div className="note-preset" key={key}>
          <PresetField
            field={inputs.find((field) => field.key === key)}
            name={key}
            value={link.preset[key]}
            problem={problem(key)}
            onValue={(value) => onPreset({ ...link.preset, [key]: value })}
          />
          <Button
            kind="quiet"
            onPress={() =>
              onPreset(Object.fromEntries(Object.entries(link.preset).filter(([one]) => one !== key)))
            }
            label={`Take away the preset ${inputs.find((field) => field.key === key)?.label ?? key}`}
          >
            Take away
          </Button>
        </div>
      ))}
      {free.length > 0 && (
        <SelectField
          label="Preset an input"
          optional
          none="Nothing more"
          options={free.map((field) => ({ id: field.key, words: field.label }))}
          value={null}
          onChange={(key) => {
            const field = free.find((one) => one.key === key);
            if (field !== undefined) onPreset({ ...link.preset, [key]: firstValue(field) });
          }}
        />
      )}
    </>
  );
}

type PresetValue = Preset[string];

function firstValue(field: Field): PresetValue {
  if (field.kind === "number") return field.start ?? field.range[0];
  return field.kind === "choice" ? (field.start ?? field.options[0]?.id ?? "") : "";
}

interface PresetFieldProps {
  readonly field: Field | undefined;
  readonly name: string;
  readonly value: PresetValue | undefined;
  readonly problem: string | undefined;
  readonly onValue: (value: PresetValue) => void;
}

function PresetField({ field, name, value, problem, onValue }: PresetFieldProps) {
  if (field?.kind === "choice") {
    return (
      <SelectField
        label={field.label}
        options={[...field.options]}
        value={typeof value === "string" ? value : null}
        onChange={onValue}
        problem={problem}
      />
    );
  }
  if (field?.kind === "number") {
    return <NumberPreset field={field} value={value} problem={problem} onValue={onValue} />;
  }
  if (field?.kind === "text") {
    return (
      <TextField label={field.label} value={typeof value === "string" ? value : ""} onChange={onValue} />
    );
  }
  return (
    <p>
      <b>{field?.label ?? name}</b> {Array.isArray(value) ? value.join(", ") : String(value)}
    </p>
  );
}

/** Shown in the field's unit, kept in SI. Words that are no number stay in the field and are not kept. */
function NumberPreset({
  field,
  value,
  problem,
  onValue,
}: {
  readonly field: Extract<Field, { kind: "number" }>;
  readonly value: PresetValue | undefined;
  readonly problem: string | undefined;
  readonly onValue: (value: PresetValue) => void;
}) {
  const text =
    typeof value === "number"
      ? String(Number(fromSi(value, field.unit).toPrecision(10)))
      : String(value ?? "");
  return (
    <NumberField
      label={field.label}
      unit={field.unit}
      value={text}
      problem={problem}
      onChange={(typed) => {
        const reading = readNumber(typed);
        // "3." reads as 3 and would lose its point while somebody types: only what comes back the same is a number.
        const number = reading.kind === "number" ? toSi(reading.number, field.unit) : null;
        const same = number !== null && String(Number(fromSi(number, field.unit).toPrecision(10))) === typed;
        onValue(same ? number : typed);
      }}
    />
  );
}
