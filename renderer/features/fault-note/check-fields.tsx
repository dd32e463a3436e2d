import { useState } from "react";
import { outcomeMeanings } from "#shared-lib/contract/fault-note.ts";
import { checkHazards } from "#shared-lib/starter-note.ts";
import { Button } from "../../ui/button.tsx";
import { NumberField } from "../../ui/number-field.tsx";
import { SelectField } from "../../ui/select-field.tsx";
import { TextArea, TextField } from "../../ui/text-field.tsx";
import { hazardWords } from "./hazard-parts.ts";
import { EntryList } from "./list-editor.tsx";
import type { NoteFieldsProps } from "./note-fields.tsx";
import { changed, type FormCause, type FormCheck, type FormOutcome, newKey } from "./note-form.ts";
import { countWords, meaningWords } from "./note-words.ts";

const hazardOptions = checkHazards.map((hazard) => ({ id: hazard, words: hazardWords[hazard] }));
const meaningOptions = outcomeMeanings.map((meaning) => ({ id: meaning, words: meaningWords[meaning] }));

/** The checks that tell the causes apart. Each is one line until it is opened: a note may have many. */
export function CheckFields({ form, onChange, problems }: NoteFieldsProps) {
  const [open, setOpen] = useState<ReadonlySet<string>>(new Set());
  const { checks } = form;
  const setChecks = (next: readonly FormCheck[]) => onChange({ checks: next });
  return (
    <EntryList
      one="Check"
      items={checks}
      onItems={setChecks}
      addWord="Add a check"
      most={40}
      make={(): FormCheck => {
        const key = newKey();
        setOpen((before) => new Set([...before, key]));
        return { key, title: "", how: "", minutes: "5", caution: "", hazard: "none", outcomes: [] };
      }}
    >
      {(check, index) => {
        const wrong = [...problems.keys()].some((path) => path.startsWith(`checks.${index}.`));
        if (!open.has(check.key) && !wrong) {
          return (
            <div className="spread">
              <span>
                <b>{check.title}</b>{" "}
                <span className="soft">
                  {check.minutes} min; {countWords(check.outcomes.length, "outcome")}
                </span>
              </span>
              <Button
                kind="quiet"
                onPress={() => setOpen((before) => new Set([...before, check.key]))}
                label={`Edit check ${index + 1}`}
              >
                Edit
              </Button>
            </div>
          );
        }
        return (
          <OneCheck
            check={check}
            index={index}
            causes={form.causes}
            problem={(field) => problems.get(`checks.${index}.${field}`)}
            onCheck={(change) => setChecks(changed(checks, index, change))}
          />
        );
      }}
    </EntryList>
  );
}

interface OneCheckProps {
  readonly check: FormCheck;
  readonly index: number;
  readonly causes: readonly FormCause[];
  readonly problem: (field: string) => string | undefined;
  readonly onCheck: (change: Partial<FormCheck>) => void;
}

function OneCheck({ check, index, causes, problem, onCheck }: OneCheckProps) {
  return (
    <>
      <TextField
        label={`Check ${index + 1}`}
        value={check.title}
        onChange={(title) => onCheck({ title })}
        problem={problem("title")}
      />
      <TextArea
        label="How it is done"
        value={check.how}
        onChange={(how) => onCheck({ how })}
        problem={problem("how")}
      />
      <div className="fields-two">
        <SelectField
          label="Hazard"
          options={hazardOptions}
          value={check.hazard}
          onChange={(hazard) => onCheck({ hazard })}
        />
        <NumberField
          label="Takes"
          unit="min"
          value={check.minutes}
          onChange={(minutes) => onCheck({ minutes })}
          problem={problem("minutes")}
        />
      </div>
      <TextField
        label="Caution"
        optional
        value={check.caution}
        onChange={(caution) => onCheck({ caution })}
        problem={problem("caution")}
      />
      <Outcomes
        outcomes={check.outcomes}
        causes={causes}
        problem={problem}
        onOutcomes={(outcomes) => onCheck({ outcomes })}
      />
    </>
  );
}

interface OutcomesProps {
  readonly outcomes: readonly FormOutcome[];
  readonly causes: readonly FormCause[];
  readonly problem: (field: string) => string | undefined;
  readonly onOutcomes: (outcomes: readonly FormOutcome[]) => void;
}

/** What may be seen, and what each says about every cause. */
function Outcomes({ outcomes, causes, problem, onOutcomes: setOutcomes }: OutcomesProps) {
  return (
    <EntryList
      one="Outcome"
      items={outcomes}
      onItems={setOutcomes}
      addWord="Add an outcome"
      most={12}
      make={(): FormOutcome => ({ key: newKey(), words: "", means: {} })}
    >
      {(outcome, at) => (
        <>
          <TextField
            label={`Outcome ${at + 1}: what is seen`}
            value={outcome.words}
            onChange={(words) => setOutcomes(changed(outcomes, at, { words }))}
            problem={problem(`outcomes.${at}.words`)}
          />
          <div className="note-meanings">
            {causes.map((cause, number) => (
              <SelectField
                key={cause.key}
                label={`${number + 1} ${cause.title}`}
                options={meaningOptions}
                none="says nothing of"
                value={outcome.means[cause.key] ?? null}
                onChange={(meaning) =>
                  setOutcomes(changed(outcomes, at, { means: { ...outcome.means, [cause.key]: meaning } }))
                }
              />
            ))}
          </div>
        </>
      )}
    </EntryList>
  );
}
