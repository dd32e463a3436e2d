import { Link } from "@tanstack/react-router";
import type { Visit } from "#shared-lib/contract/visit.ts";
import { formatDayAndTime, formatTime } from "#shared-lib/format.ts";
import { Button } from "../../ui/button.tsx";
import { EmptyState } from "../../ui/empty-state.tsx";
import { Table, type TableColumn } from "../../ui/table.tsx";

interface LiftVisitsProps {
  readonly visits: readonly Visit[];
  readonly onRecord: () => void;
}

const columns: readonly TableColumn<Visit>[] = [
  {
    id: "when",
    head: "When",
    rowHead: true,
    cell: (visit) => (
      <Link to="/visit/$id" params={{ id: visit.id }} className="nowrap">
        {formatDayAndTime(visit.arrivedAt)}
        {visit.leftAt !== null && `–${formatTime(visit.leftAt)}`}
      </Link>
    ),
  },
  { id: "kind", head: "Kind", cell: (visit) => visit.kind },
  { id: "engineer", head: "Engineer", cell: (visit) => visit.engineer.name },
  {
    id: "found",
    head: "Found, done",
    cell: (visit) => (
      <>
        {[visit.found, visit.done].filter((words) => words !== "").join(". ") || (
          <span className="soft">nothing written yet</span>
        )}
        {visit.fix !== null && (
          <>
            <br />
            <span className="soft">Cause: {visit.fix.cause}</span>
          </>
        )}
      </>
    ),
  },
  {
    id: "callout",
    head: "Callout",
    cell: (visit) => <span className="nowrap">{visit.calloutNumber ?? ""}</span>,
  },
];

export function LiftVisits({ visits, onRecord }: LiftVisitsProps) {
  const record = <Button onPress={onRecord}>Record a visit</Button>;
  if (visits.length === 0) {
    return <EmptyState action={record}>Visits to this lift will stand here.</EmptyState>;
  }
  return (
    <div className="stack">
      <div className="scroll-frame">
        <Table label="Visits" columns={columns} rows={visits} rowKey={(visit) => visit.id} />
      </div>
      <div>{record}</div>
    </div>
  );
}
