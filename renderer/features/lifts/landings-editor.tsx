import { useState } from "react";
import type { Landing } from "#shared-lib/contract/lift.ts";
import { formatLevel } from "#shared-lib/format.ts";
import { Button } from "../../ui/button.tsx";
import { EmptyState } from "../../ui/empty-state.tsx";
import { ErrorNote } from "../../ui/error-note.tsx";
import { SavedState } from "../../ui/saved-state.tsx";
import { SelectField } from "../../ui/select-field.tsx";
import { Table, type TableColumn } from "../../ui/table.tsx";
import { TextField } from "../../ui/text-field.tsx";
import { useDraft } from "../../use-draft.ts";
import { useWrite } from "../../use-write.ts";
import {
  addLanding,
  changeLanding,
  draftOfLandings,
  type LandingRow,
  type LandingsDraft,
  type LandingsReading,
  moveLanding,
  readLandings,
  removeLanding,
} from "./landings-draft.ts";

interface LandingsEditorProps {
  readonly liftId: string;
  readonly version: number;
  readonly landings: readonly Landing[];
}

/** The landings as a table; changed all together, because their order and levels belong together. */
export function LandingsEditor({ liftId, version, landings }: LandingsEditorProps) {
  const draft = useDraft<LandingsDraft>(`lift.setLandings ${liftId}`, draftOfLandings(landings, false));
  const write = useWrite("lift.setLandings");
  const [given, setGiven] = useState(0);
  const { open, rows, seen, tried } = draft.value;
  const reading = readLandings(rows);
  const begin = () => draft.set(draftOfLandings(landings, true));
  const add = () => {
    setGiven(given + 1);
    draft.set((before) => addLanding(before, `new ${Date.now()} ${given}`));
  };
  const save = async (asSeen: LandingsDraft["seen"]) => {
    draft.set((before) => ({ ...before, tried: true }));
    if (reading.landings === null) return;
    const known = new Set(asSeen.map(({ id }) => id));
    // A landing that somebody deleted meanwhile is entered anew instead of being lost.
    const kept = reading.landings.map(({ id, ...row }) =>
      id === undefined || !known.has(id) ? row : { id, ...row },
    );
    const result = await write.run({ liftId, version, seen: [...asSeen], landings: kept });
    if (result.ok) await draft.drop();
  };
  if (!open) return <LandingsSheet landings={landings} onChange={begin} />;
  const isConflict = write.error?.code === "version-conflict";
  return (
    <div className="stack">
      <LandingRows draft={draft.value} set={draft.set} problems={tried ? reading.problems : {}} />
      <ErrorNote error={write.error} />
      {isConflict && (
        <div className="stack">
          <p className="strong">Saved meanwhile:</p>
          <LandingsTable landings={landings} />
          <div className="buttons">
            <Button onPress={() => void save(landings)}>Save yours as the newest</Button>
            <Button onPress={begin}>Go on from the saved ones</Button>
          </div>
        </div>
      )}
      <div className="buttons">
        <Button kind="first" onPress={() => void save(seen)} pending={write.pending}>
          Save the landings
        </Button>
        <Button onPress={add}>Add a landing</Button>
        <Button onPress={() => void draft.drop()}>Give up what I typed</Button>
        <SavedState kind="not saved yet" keptAt={draft.keptAt} />
      </div>
    </div>
  );
}

interface LandingsSheetProps {
  readonly landings: readonly Landing[];
  readonly onChange: () => void;
}

function LandingsSheet({ landings, onChange }: LandingsSheetProps) {
  if (landings.length === 0) {
    return (
      <EmptyState action={<Button onPress={onChange}>Enter the landings</Button>}>
        Landings with their markings, levels and entrances will stand here.
      </EmptyState>
    );
  }
  return (
    <div className="stack">
      <LandingsTable landings={landings} />
      <div>
        <Button onPress={onChange}>Change the landings</Button>
      </div>
    </div>
  );
}

const entranceWords = { front: "front", rear: "rear", both: "front and rear" } as const;

const columns: readonly TableColumn<Landing>[] = [
  { id: "marking", head: "Marking", rowHead: true, cell: (landing) => landing.marking },
  { id: "name", head: "Name", cell: (landing) => landing.name },
  { id: "level", head: "Level, m", number: true, cell: (landing) => formatLevel(landing.level) },
  { id: "entrances", head: "Entrances", cell: (landing) => entranceWords[landing.entrances] },
];

export function LandingsTable({ landings }: { readonly landings: readonly Landing[] }) {
  const sorted = [...landings].sort((a, b) => b.level - a.level);
  return <Table label="Landings" columns={columns} rows={sorted} rowKey={(landing) => landing.id} />;
}

interface LandingRowsProps {
  readonly draft: LandingsDraft;
  readonly set: (next: (before: LandingsDraft) => LandingsDraft) => void;
  readonly problems: LandingsReading["problems"];
}

function LandingRows({ draft, set, problems }: LandingRowsProps) {
  return (
    <ol className="landing-rows" aria-label="Landings, from the highest down">
      {draft.rows.map((row, i) => (
        <li key={row.key}>
          <LandingFields
            row={row}
            problems={problems[row.key] ?? {}}
            onChange={(part) => set((before) => changeLanding(before, row.key, part))}
          />
          <div className="buttons">
            <Button
              kind="quiet"
              disabled={i === 0}
              label={`Up: landing ${row.marking}`}
              onPress={() => set((before) => moveLanding(before, row.key, -1))}
            >
              Up
            </Button>
            <Button
              kind="quiet"
              disabled={i === draft.rows.length - 1}
              label={`Down: landing ${row.marking}`}
              onPress={() => set((before) => moveLanding(before, row.key, 1))}
            >
              Down
            </Button>
            <Button
              kind="quiet"
              label={`Remove landing ${row.marking}`}
              onPress={() => set((before) => removeLanding(before, row.key))}
            >
              Remove
            </Button>
          </div>
        </li>
      ))}
    </ol>
  );
}

interface LandingFieldsProps {
  readonly row: LandingRow;
  readonly problems: { readonly marking?: string; readonly level?: string };
  readonly onChange: (part: Partial<LandingRow>) => void;
}

function LandingFields({ row, problems, onChange }: LandingFieldsProps) {
  return (
    <div className="landing-fields">
      <TextField
        label="Marking"
        value={row.marking}
        onChange={(marking) => onChange({ marking })}
        problem={problems.marking}
      />
      <TextField label="Name" value={row.name} onChange={(name) => onChange({ name })} />
      <TextField
        label="Level"
        unit="m"
        value={row.level}
        onChange={(level) => onChange({ level })}
        problem={problems.level}
      />
      <SelectField
        label="Entrances"
        options={(["front", "rear", "both"] as const).map((id) => ({ id, words: entranceWords[id] }))}
        value={row.entrances}
        onChange={(entrances) => onChange({ entrances })}
      />
    </div>
  );
}
