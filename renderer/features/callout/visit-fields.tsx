import type { SillbookError } from "#shared-lib/errors.ts";
import { type FaultGroup, faultGroups, visitKinds } from "#shared-lib/words.ts";
import { Caution } from "../../ui/caution.tsx";
import { Choice } from "../../ui/choice.tsx";
import { DateTimeField } from "../../ui/date-time-field.tsx";
import { SelectField } from "../../ui/select-field.tsx";
import { TextArea, TextField } from "../../ui/text-field.tsx";
import type { DraftState } from "../../use-draft.ts";
import { useProgram } from "../../use-program.ts";
import { fieldProblem } from "./field-problem.ts";
import { PersonField } from "./person-field.tsx";
import { type VisitDraft, type VisitProblems, visitProblems } from "./visit-draft.ts";

interface VisitFieldsProps {
  readonly draft: DraftState<VisitDraft>;
  readonly error: SillbookError | undefined;
}

interface PartProps {
  readonly value: VisitDraft;
  readonly change: (part: Partial<VisitDraft>) => void;
  readonly problems: VisitProblems;
  readonly refused: (field: string) => string | undefined;
  readonly disabled: boolean;
}

export function VisitFields({ draft, error }: VisitFieldsProps) {
  const { value, set, ready } = draft;
  const parts: PartProps = {
    value,
    change: (part) => set((before) => ({ ...before, ...part })),
    problems: value.asked ? visitProblems(value, new Date()) : {},
    refused: (field) => fieldProblem(error, field) ?? fieldProblem(error, `fields.${field}`),
    disabled: !ready,
  };
  return (
    <>
      <WhoAndWhen {...parts} />
      <Words {...parts} />
      <PartsAndReadings {...parts} />
      <Caution>
        Leave no bridge in. Isolate, lock off and prove dead before touching; measure live only with training
        and a rated meter. Local codes and the maker’s instructions decide.
      </Caution>
    </>
  );
}

function WhoAndWhen({ value, change, problems, refused }: PartProps) {
  const { people } = useProgram();
  return (
    <>
      <Choice
        label="Kind of visit"
        options={visitKinds.map((one) => ({ id: one, words: one }))}
        value={value.kind}
        onChange={(kind) => change({ kind })}
      />
      <div className="fields-three">
        <PersonField
          label="Who attended"
          people={people}
          value={value.engineerId}
          onChange={(engineerId) => change({ engineerId })}
          problem={problems.engineer ?? refused("engineerId")}
        />
        <DateTimeField
          label="Arrived"
          value={value.arrived}
          onChange={(arrived) => change({ arrived })}
          problem={problems.arrived ?? refused("arrivedAt")}
        />
        <DateTimeField
          label="Left"
          optional
          value={value.left}
          onChange={(left) => change({ left })}
          problem={problems.left ?? refused("leftAt")}
        />
      </div>
    </>
  );
}

function Words({ value, change, problems, refused, disabled }: PartProps) {
  return (
    <>
      <div className="fields-two">
        <TextArea
          label="Found"
          value={value.found}
          onChange={(found) => change({ found })}
          problem={refused("found")}
          disabled={disabled}
        />
        <TextArea
          label="Done"
          value={value.done}
          onChange={(done) => change({ done })}
          problem={refused("done")}
          disabled={disabled}
        />
        <TextArea
          label="Cause"
          optional
          hint="what was wrong, in one sentence"
          value={value.cause}
          onChange={(cause) => change({ cause })}
          problem={problems.cause ?? fieldWords(refused("fix.cause"))}
          disabled={disabled}
        />
        <TextArea
          label="Fix"
          optional
          hint="what ended it"
          value={value.fix}
          onChange={(fix) => change({ fix })}
          problem={problems.fix ?? fieldWords(refused("fix.fix"))}
          disabled={disabled}
        />
      </div>
      {value.cause !== "" && (
        <SelectField<FaultGroup>
          label="Fault group of the cause"
          options={faultGroups.map((one) => ({ id: one, words: one }))}
          value={value.group}
          onChange={(group) => change({ group })}
        />
      )}
    </>
  );
}

function fieldWords(problem: string | undefined): string | undefined {
  return problem === undefined ? undefined : `${problem} Nothing was recorded.`;
}

function PartsAndReadings({ value, change, problems, refused, disabled }: PartProps) {
  return (
    <>
      <div className="fields-two">
        <TextArea
          label="Parts used"
          optional
          hint="one a line: number, name, then comma and marking"
          hintWideOnly
          value={value.parts}
          onChange={(parts) => change({ parts })}
          problem={problems.parts ?? refused("parts")}
          disabled={disabled}
        />
        <TextArea
          label="Readings"
          optional
          hint="one a line, with the unit"
          hintWideOnly
          value={value.readings}
          onChange={(readings) => change({ readings })}
          problem={problems.readings ?? refused("readings")}
          disabled={disabled}
        />
      </div>
      <div className="fields-two">
        <TextField
          label="Display reading"
          optional
          marking
          value={value.displayReading}
          onChange={(displayReading) => change({ displayReading })}
          disabled={disabled}
        />
        <Choice
          label="Chargeable"
          options={[
            { id: "yes", words: "Chargeable" },
            { id: "no", words: "Not chargeable" },
            { id: "not decided", words: "Not decided" },
          ]}
          value={value.chargeable}
          onChange={(chargeable) => change({ chargeable })}
        />
      </div>
    </>
  );
}
