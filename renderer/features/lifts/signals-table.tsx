import { useState } from "react";
import type { Landing, Signal } from "#shared-lib/contract/lift.ts";
import { Button } from "../../ui/button.tsx";
import { EmptyState } from "../../ui/empty-state.tsx";
import { ErrorNote } from "../../ui/error-note.tsx";
import { Table, type TableColumn } from "../../ui/table.tsx";
import { useWrite } from "../../use-write.ts";
import { SignalDialog } from "./signal-dialog.tsx";

interface SignalsTableProps {
  readonly liftId: string;
  readonly landings: readonly Landing[];
  readonly signals: readonly Signal[];
}

type Asked = { readonly signal: Signal | null } | null;

/** The inputs and outputs of the controller as that site's drawing marks them. */
export function SignalsTable({ liftId, landings, signals }: SignalsTableProps) {
  const [asked, setAsked] = useState<Asked>(null);
  const remove = useWrite("record.delete");
  const columns: readonly TableColumn<Signal>[] = [
    ...signalColumns(landings),
    {
      id: "acts",
      head: "Change it",
      cell: (signal) => (
        <span className="row">
          <Button kind="quiet" label={`Change ${signal.name}`} onPress={() => setAsked({ signal })}>
            Change
          </Button>
          <Button
            kind="quiet"
            label={`Delete ${signal.name}`}
            onPress={() => void remove.run({ entity: "signal", id: signal.id, version: signal.version })}
          >
            Delete
          </Button>
        </span>
      ),
    },
  ];
  const add = <Button onPress={() => setAsked({ signal: null })}>Add a signal</Button>;
  return (
    <div className="stack">
      {signals.length === 0 ? (
        <EmptyState action={add}>
          Signals with their role, terminal marking and active level will stand here.
        </EmptyState>
      ) : (
        <>
          <div className="scroll-frame">
            <Table label="Signals" columns={columns} rows={signals} rowKey={(signal) => signal.id} />
          </div>
          <div>{add}</div>
        </>
      )}
      <ErrorNote error={remove.error} />
      {asked !== null && (
        <SignalDialog
          key={asked.signal?.id ?? "new"}
          liftId={liftId}
          landings={landings}
          signal={asked.signal}
          onClose={() => setAsked(null)}
        />
      )}
    </div>
  );
}

export function signalColumns(landings: readonly Landing[]): readonly TableColumn<Signal>[] {
  return [
    { id: "name", head: "Signal", rowHead: true, cell: (signal) => signal.name },
    { id: "role", head: "Role", cell: (signal) => signal.role },
    {
      id: "marking",
      head: "Terminal",
      cell: (signal) => <span className="marking">{signal.marking}</span>,
    },
    { id: "level", head: "On when", cell: (signal) => signal.activeLevel },
    {
      id: "landing",
      head: "Landing",
      cell: (signal) => landings.find((landing) => landing.id === signal.landingId)?.marking ?? "",
    },
  ];
}
