import type { FormEvent } from "react";
import type { OutputOf } from "#shared-lib/contract/operations.ts";
import type { Visit } from "#shared-lib/contract/visit.ts";
import { formatDayAndTime } from "#shared-lib/format.ts";
import { Button } from "../../ui/button.tsx";
import { type ConflictField, ConflictView } from "../../ui/conflict-view.tsx";
import { RuledTitle } from "../../ui/ruled-title.tsx";
import { SavedState } from "../../ui/saved-state.tsx";
import { useCommand } from "../../use-command.ts";
import { useDraft } from "../../use-draft.ts";
import { useProgram } from "../../use-program.ts";
import { useWrite } from "../../use-write.ts";
import { fixOf, toVisitDraft, toVisitFields, type VisitDraft, visitProblems } from "./visit-draft.ts";
import { VisitFields } from "./visit-fields.tsx";
import { Refused } from "./way-out.tsx";

interface VisitFormProps {
  readonly found: OutputOf<"callout.find">;
  readonly liftId: string;
  /** The visit that is corrected; null for a new one. Follows the store. */
  readonly visit: Visit | null;
  readonly onClose: () => void;
  /** With the id of the recorded fix, where a cause was found. */
  readonly onSaved: (fixId: string | null) => void;
}

/** An engineer's attendance: found, done, cause, fix, parts, readings, times. Kept as a draft until it is on disk. */
export function VisitForm(props: VisitFormProps) {
  const { visit, found, onClose } = props;
  const form = useVisitForm(props);
  const { draft, write } = form;
  const isConflict = write.error?.code === "version-conflict";
  useCommand({
    name: "Save the visit",
    keys: "Ctrl S",
    group: "Callout",
    run: () => void form.save(draft.value.version),
  });
  return (
    <form
      className="stack visit-form"
      noValidate
      onSubmit={(event: FormEvent) => {
        event.preventDefault();
        void form.save(draft.value.version);
      }}
    >
      <RuledTitle aside={<SavedState kind="not saved yet" keptAt={draft.keptAt} />}>
        {visit === null ? "Record a visit" : "Correct the visit"} · {found.line.liftTitle}
      </RuledTitle>
      {isConflict && visit !== null && (
        <ConflictView
          fields={visitConflict(draft.value, toVisitDraft(visit, found.callout.group))}
          onSaveMine={() => void form.save(visit.version)}
          onTakeTheirs={() => void form.giveUp()}
          pending={write.pending}
        />
      )}
      <VisitFields draft={draft} error={write.error} />
      {!isConflict && <Refused error={write.error} />}
      <div className="buttons">
        <Button kind="first" type="submit" keys="Ctrl S" pending={write.pending} disabled={!draft.ready}>
          Save the visit
        </Button>
        <Button kind="quiet" onPress={onClose}>
          Back, keep as draft
        </Button>
      </div>
    </form>
  );
}

function useVisitForm({ found, liftId, visit, onSaved }: VisitFormProps) {
  const start = useFirstDraft(found, visit);
  const { callout } = found;
  const key = visit === null ? `visit.new.${callout.id}` : `visit.change.${visit.id}`;
  const draft = useDraft<VisitDraft>(key, start);
  const record = useWrite("visit.record");
  const change = useWrite("visit.change");
  const write = visit === null ? record : change;
  const save = async (version: number | null) => {
    draft.set((before) => ({ ...before, asked: true }));
    const now = new Date();
    const { engineerId } = draft.value;
    if (Object.keys(visitProblems(draft.value, now)).length > 0 || engineerId === null) return;
    const fields = toVisitFields(draft.value, engineerId, now);
    const fix = fixOf(draft.value);
    const result =
      visit === null
        ? await record.run({ ...fields, liftId, calloutId: callout.id, fix })
        : await change.run({ id: visit.id, version: version ?? visit.version, fields, fix });
    if (!result.ok) return;
    await draft.drop();
    onSaved(result.value.fixId);
  };
  const giveUp = async () => {
    write.clearError();
    await draft.drop();
  };
  return { draft, write, save, giveUp };
}

/** What is known already: who went, and when they arrived. */
function useFirstDraft(found: OutputOf<"callout.find">, visit: Visit | null): VisitDraft {
  const { person } = useProgram();
  const { callout, events, visitIds } = found;
  if (visit !== null) return toVisitDraft(visit, callout.group);
  const arrived = events.filter(({ kind }) => kind === "arrived").at(-1);
  return {
    version: null,
    kind: visitIds.length === 0 ? "callout" : "return visit",
    engineerId: callout.engineer?.id ?? (person?.role === "engineer" ? person.id : null),
    arrived: arrived === undefined ? "" : formatDayAndTime(arrived.at),
    left: "",
    found: "",
    done: "",
    cause: "",
    fix: "",
    group: callout.group,
    parts: "",
    readings: "",
    displayReading: callout.displayReading,
    chargeable: "not decided",
    asked: false,
  };
}

const conflictLabels = {
  found: "Found",
  done: "Done",
  cause: "Cause",
  fix: "Fix",
  arrived: "Arrived",
  left: "Left",
  parts: "Parts used",
  readings: "Readings",
  displayReading: "Display reading",
  chargeable: "Chargeable",
} as const;

function visitConflict(mine: VisitDraft, theirs: VisitDraft): readonly ConflictField[] {
  return (Object.keys(conflictLabels) as (keyof typeof conflictLabels)[]).map((field) => ({
    label: conflictLabels[field],
    mine: mine[field],
    theirs: theirs[field],
  }));
}
