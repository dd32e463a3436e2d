import { useMemo } from "react";
import type { OutputOf } from "#shared-lib/contract/operations.ts";
import { noteStatuses } from "#shared-lib/words.ts";
import { Choice } from "../../ui/choice.tsx";
import { EmptyState } from "../../ui/empty-state.tsx";
import { type ReadState, useRead } from "../../use-read.ts";
import { SaveList } from "../export/save-list-panel.tsx";
import { sentenceCase } from "../fault-note/note-words.ts";
import type { FindAddress } from "./find-address.ts";
import { PlaceLink } from "./place-link.tsx";
import { groupsOfNotes, noteMarks, type ResultGroup } from "./result-groups.ts";

export interface AllNotesState {
  readonly read: ReadState<OutputOf<"faultNote.list">>;
  readonly groups: readonly ResultGroup[];
}

function notesInput({ group, status }: Pick<FindAddress, "group" | "status">) {
  return { ...(group === null ? {} : { group }), ...(status === null ? {} : { status }) };
}

/** What stands under the box while no words are in it. */
export function useAllNotes({ group, status }: FindAddress, enabled: boolean): AllNotesState {
  const read = useRead("faultNote.list", notesInput({ group, status }), {
    enabled,
    keepPrevious: true,
    entities: ["fault note", "recorded fix", "callout"],
  });
  const groups = useMemo(() => groupsOfNotes(read.value?.notes ?? []), [read.value]);
  return { read, groups };
}

interface AllNotesProps {
  readonly address: FindAddress;
  readonly count: number;
  readonly onChange: (change: Partial<FindAddress>) => void;
}

const statusOptions = [
  { id: "any", words: "All" } as const,
  ...noteStatuses.map((status) => ({ id: status, words: sentenceCase(status), mark: noteMarks[status] })),
];

export function AllNotesHead({ address, count, onChange }: AllNotesProps) {
  const { site, controller, drive, since, only } = address;
  const waiting = site !== null || controller !== null || drive !== null || since !== null || only;
  return (
    <div className="stack find-all-head">
      <div className="spread">
        <h2>
          All fault notes <span className="ruled-count">{count}</span>
        </h2>
        <span className="row">
          {count > 0 && <SaveList list="fault notes" input={notesInput(address)} />}
          <PlaceLink place={{ to: "/note/new" }} kind="quiet">
            Write a new fault note
          </PlaceLink>
        </span>
      </div>
      <Choice
        label="Status"
        options={statusOptions}
        value={address.status ?? "any"}
        onChange={(id) => onChange({ status: id === "any" ? null : id })}
      />
      {waiting && (
        <p className="soft label">Site, controller, drive and date filter once there are words in the box.</p>
      )}
      {count === 0 && (
        <EmptyState>
          {address.status === null && address.group === null
            ? "Here the fault notes of the company will stand, by fault group."
            : "No fault note of that group and status."}
        </EmptyState>
      )}
    </div>
  );
}
