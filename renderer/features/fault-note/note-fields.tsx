import type { ReactNode } from "react";
import { type DoorKind, type DriveKind, doorKinds, driveKinds, faultGroups } from "#shared-lib/words.ts";
import { Checkbox } from "../../ui/checkbox.tsx";
import { RuledTitle } from "../../ui/ruled-title.tsx";
import { SelectField } from "../../ui/select-field.tsx";
import { TextArea, TextField } from "../../ui/text-field.tsx";
import { useRead } from "../../use-read.ts";
import { CalculatorFields } from "./calculator-fields.tsx";
import { CauseFields } from "./cause-fields.tsx";
import { CheckFields } from "./check-fields.tsx";
import { LineList } from "./list-editor.tsx";
import type { NoteForm } from "./note-form.ts";
import { sentenceCase } from "./note-words.ts";

export interface NoteFieldsProps {
  readonly form: NoteForm;
  readonly onChange: (change: Partial<NoteForm>) => void;
  /** Sentences by path, as from readForm. */
  readonly problems: ReadonlyMap<string, string>;
}

const groupOptions = faultGroups.map((group) => ({ id: group, words: sentenceCase(group) }));

/** Everything a fault note says, to be typed. */
export function NoteFields(props: NoteFieldsProps) {
  const { form, onChange, problems } = props;
  return (
    <div className="stack note-fields">
      <HeadFields {...props} />
      <Part title="Symptoms, as people say it">
        <LineList
          one="Symptom"
          lines={form.symptoms}
          onLines={(symptoms) => onChange({ symptoms })}
          addWord="Add a phrasing"
          most={40}
          problemAt={(index) => problems.get(`symptoms.${index}`)}
        />
      </Part>
      <Part title="Where it applies">
        <AppliesFields {...props} />
      </Part>
      <Part title="Causes, most likely first">
        <CauseFields {...props} />
      </Part>
      <Part title="Checks">
        <CheckFields {...props} />
      </Part>
      <Part title="Cautions">
        <LineList
          one="Caution"
          lines={form.cautions}
          onLines={(cautions) => onChange({ cautions })}
          addWord="Add a caution"
          most={20}
          problemAt={(index) => problems.get(`cautions.${index}`)}
        />
      </Part>
      <Part title="Calculators and check plans">
        <CalculatorFields {...props} />
        <PlanFields {...props} />
      </Part>
      <TextArea
        label="Source"
        hint="clause and edition, or “common practice, no source”"
        optional
        value={form.source}
        onChange={(source) => onChange({ source })}
        problem={problems.get("source")}
      />
    </div>
  );
}

function HeadFields({ form, onChange, problems }: NoteFieldsProps) {
  return (
    <div className="fields-two">
      <TextField
        label="Title"
        hint="what is seen, in one line"
        value={form.title}
        onChange={(title) => onChange({ title })}
        problem={problems.get("title")}
      />
      <SelectField
        label="Fault group"
        options={groupOptions}
        value={form.group}
        onChange={(group) => onChange({ group })}
        problem={problems.get("group")}
      />
    </div>
  );
}

function Part({ title, children }: { readonly title: string; readonly children: ReactNode }) {
  return (
    <section className="stack">
      <RuledTitle>{title}</RuledTitle>
      {children}
    </section>
  );
}

function AppliesFields({ form, onChange, problems }: NoteFieldsProps) {
  return (
    <>
      <Several
        label="Drives"
        all={driveKinds}
        chosen={form.drives}
        onChange={(drives: DriveKind[]) => onChange({ drives })}
      />
      <Several
        label="Doors"
        all={doorKinds}
        chosen={form.doors}
        onChange={(doors: DoorKind[]) => onChange({ doors })}
      />
      <LineList
        one="Controller family"
        lines={form.controllerFamilies}
        onLines={(controllerFamilies) => onChange({ controllerFamilies })}
        addWord="Add a controller family"
        most={40}
        problemAt={(index) => problems.get(`applies.controllerFamilies.${index}`)}
      />
      <TextArea
        label="In words"
        optional
        value={form.appliesWords}
        onChange={(appliesWords) => onChange({ appliesWords })}
        problem={problems.get("applies.words")}
      />
    </>
  );
}

interface SeveralProps<Word extends string> {
  readonly label: string;
  readonly all: readonly Word[];
  readonly chosen: readonly Word[];
  readonly onChange: (chosen: Word[]) => void;
}

/** None ticked: it applies to all of them. */
function Several<Word extends string>({ label, all, chosen, onChange }: SeveralProps<Word>) {
  return (
    <fieldset>
      <legend className="field-label">
        {label} {chosen.length === 0 && <span className="field-optional">none ticked: all of them</span>}
      </legend>
      <div className="row">
        {all.map((word) => (
          <Checkbox
            key={word}
            checked={chosen.includes(word)}
            onChange={(on) => onChange(all.filter((one) => (one === word ? on : chosen.includes(one))))}
          >
            {word}
          </Checkbox>
        ))}
      </div>
    </fieldset>
  );
}

function PlanFields({ form, onChange }: NoteFieldsProps) {
  const plans = useRead("check.plans", {}, { entities: [] }).value?.plans ?? [];
  return (
    <fieldset>
      <legend className="field-label">Check plans</legend>
      <div className="row">
        {plans.map((plan) => (
          <Checkbox
            key={plan.id}
            checked={form.checkPlans.includes(plan.id)}
            onChange={(on) =>
              onChange({
                checkPlans: on
                  ? [...form.checkPlans, plan.id]
                  : form.checkPlans.filter((id) => id !== plan.id),
              })
            }
          >
            {plan.name}
          </Checkbox>
        ))}
      </div>
    </fieldset>
  );
}
