import { Link } from "@tanstack/react-router";
import type { Calculation } from "#shared-lib/contract/calculation.ts";
import type { Landing } from "#shared-lib/contract/lift.ts";
import { formatDayAndTime } from "#shared-lib/format.ts";
import { EmptyState } from "../../ui/empty-state.tsx";
import { Table, type TableColumn } from "../../ui/table.tsx";

interface LiftResultsProps {
  readonly liftId: string;
  readonly calculations: readonly Calculation[];
  readonly landings: readonly Landing[];
}

/** Saved results of the calculators, newest first. */
export function LiftResults({ liftId, calculations, landings }: LiftResultsProps) {
  const columns: readonly TableColumn<Calculation>[] = [
    {
      id: "calculator",
      head: "Calculator",
      rowHead: true,
      cell: (one) => (
        <Link
          to="/bench/$calculator"
          params={{ calculator: one.calculatorId }}
          search={{ lift: liftId, ...(one.landingId === null ? {} : { landing: one.landingId }) }}
        >
          {one.calculatorName}
        </Link>
      ),
    },
    {
      id: "landing",
      head: "Landing",
      cell: (one) => landings.find((landing) => landing.id === one.landingId)?.marking ?? "",
    },
    {
      id: "verdict",
      head: "Verdict",
      cell: (one) => (
        <>
          <b>{one.verdictWord}.</b> {one.verdictSentence}
        </>
      ),
    },
    {
      id: "when",
      head: "When, by",
      cell: (one) => (
        <>
          <span className="nowrap">{formatDayAndTime(one.at)}</span>
          <br />
          {one.by.name}
        </>
      ),
    },
  ];
  return (
    <Table
      label="Saved results"
      columns={columns}
      rows={calculations}
      rowKey={(one) => one.id}
      empty={<EmptyState>Results that are saved on the Bench will stand here.</EmptyState>}
    />
  );
}
