import { faultGroups, visitKinds } from "#shared-lib/words.ts";
import { Button } from "../../ui/button.tsx";
import { Choice } from "../../ui/choice.tsx";
import { DateTimeField } from "../../ui/date-time-field.tsx";
import { FieldError } from "../../ui/field-parts.tsx";
import { SelectField } from "../../ui/select-field.tsx";
import { TextArea, TextField } from "../../ui/text-field.tsx";
import { PersonChoice } from "../bridges/person-parts.tsx";
import type { PartRow, VisitDraft } from "./visit-draft.ts";

interface VisitFieldsProps {
  readonly value: VisitDraft;
  readonly change: (part: Partial<VisitDraft>) => void;
  readonly problem: (path: string) => string | undefined;
  /** A visit of a callout keeps its kind of visit among all; one without is no callout visit. */
  readonly ofCallout: boolean;
}

/** What an engineer writes down about a visit. */
export function VisitFields(props: VisitFieldsProps) {
  const { value, change, problem } = props;
  return (
    <>
      <VisitHead {...props} />
      <div className="fields-two">
        <TextArea
          label="Found"
          value={value.found}
          onChange={(found) => change({ found })}
          problem={problem("found")}
        />
        <TextArea
          label="Done"
          value={value.done}
          onChange={(done) => change({ done })}
          problem={problem("done")}
        />
        <TextArea
          label="Readings"
          optional
          hint="one a line"
          value={value.readings}
          onChange={(readings) => change({ readings })}
          problem={problem("readings")}
        />
        <div className="stack">
          <TextField
            label="Read on a display"
            optional
            marking
            value={value.displayReading}
            onChange={(displayReading) => change({ displayReading })}
            problem={problem("displayReading")}
          />
          <Choice
            label="Chargeable"
            options={(["yes", "no", "not settled"] as const).map((id) => ({ id, words: id }))}
            value={value.chargeable}
            onChange={(chargeable) => change({ chargeable })}
          />
        </div>
      </div>
      <PartRows parts={value.parts} onChange={(parts) => change({ parts })} problem={problem("parts")} />
      <FixFields {...props} />
    </>
  );
}

function VisitHead({ value, change, problem, ofCallout }: VisitFieldsProps) {
  const kinds = visitKinds.filter((kind) => ofCallout || kind !== "callout" || value.kind === "callout");
  return (
    <>
      <Choice
        label="Kind"
        options={kinds.map((id) => ({ id, words: id }))}
        value={value.kind}
        onChange={(kind) => change({ kind })}
        problem={problem("kind")}
      />
      <div className="fields-three">
        <PersonChoice
          label="Engineer"
          value={value.engineerId}
          onChange={(engineerId) => change({ engineerId })}
          problem={problem("engineerId")}
        />
        <DateTimeField
          label="Arrived"
          value={value.arrived}
          onChange={(arrived) => change({ arrived })}
          problem={problem("arrivedAt")}
        />
        <DateTimeField
          label="Left"
          optional
          value={value.left}
          onChange={(left) => change({ left })}
          problem={problem("leftAt")}
        />
      </div>
    </>
  );
}

interface PartRowsProps {
  readonly parts: readonly PartRow[];
  readonly onChange: (parts: readonly PartRow[]) => void;
  readonly problem: string | undefined;
}

function PartRows({ parts, onChange, problem }: PartRowsProps) {
  const change = (at: number, part: Partial<PartRow>) =>
    onChange(parts.map((row, i) => (i === at ? { ...row, ...part } : row)));
  return (
    <fieldset className="stack">
      <legend className="field-label">Parts used</legend>
      {parts.map((part, i) => (
        // biome-ignore lint/suspicious/noArrayIndexKey: a row has no identity of its own before it is saved.
        <div key={i} className="part-row">
          <TextField label="Part" value={part.name} onChange={(name) => change(i, { name })} />
          <TextField
            label="How many"
            value={part.quantity}
            onChange={(quantity) => change(i, { quantity })}
          />
          <TextField
            label="Marking"
            optional
            marking
            value={part.marking}
            onChange={(marking) => change(i, { marking })}
          />
          <Button
            kind="quiet"
            label={`Remove part ${part.name}`}
            onPress={() => onChange(parts.filter((_, k) => k !== i))}
          >
            Remove
          </Button>
        </div>
      ))}
      {problem !== undefined && <FieldError problem={problem} />}
      <div>
        <Button onPress={() => onChange([...parts, { name: "", quantity: "1", marking: "" }])}>
          Add a part
        </Button>
      </div>
    </fieldset>
  );
}

function FixFields({ value, change, problem }: VisitFieldsProps) {
  return (
    <div className="fields-three">
      <TextArea
        label="Cause"
        optional
        hint="where one was found"
        value={value.cause}
        onChange={(cause) => change({ cause })}
        problem={problem("cause") ?? problem("fix.cause")}
      />
      <TextArea
        label="What ended it"
        optional
        value={value.fix}
        onChange={(fix) => change({ fix })}
        problem={problem("fix") ?? problem("fix.fix")}
      />
      <SelectField
        label="Fault group"
        options={faultGroups.map((id) => ({ id, words: id }))}
        value={value.group}
        onChange={(group) => change({ group })}
      />
    </div>
  );
}
