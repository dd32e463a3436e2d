import { Link } from "@tanstack/react-router";
import { useMemo } from "react";
import { RuledTitle } from "../../ui/ruled-title.tsx";
import { Table, type TableColumn } from "../../ui/table.tsx";
import { SaveList } from "../export/save-list-panel.tsx";
import { CalloutsLink } from "./callouts-link.tsx";
import { countColumns } from "./count-columns.tsx";
import { FewRows } from "./few-rows.tsx";
import { type Counts, missingWords, mostWords, periodWords } from "./review-words.ts";
import type { Review } from "./use-review.ts";

type LiftCount = Counts["lifts"][number];

/** Callouts per lift beside the year before, sortable; every number opens its callouts. */
export function LiftsPart({ review, counts }: { readonly review: Review; readonly counts: Counts }) {
  const { yearBefore } = review;
  const period = periodWords(review.days);
  const compared = yearBefore.kind !== "none";
  const columns = useMemo(
    () => [liftColumn, ...countColumns<LiftCount>({ period, compared, titleOf: (row) => row.liftTitle })],
    [period, compared],
  );
  const { lifts, unsettled } = counts;
  return (
    <section className="review-beside">
      <RuledTitle aside={lifts.length > 0 && <SaveList list="counts per lift" input={review.period} />}>
        {mostWords(lifts, ({ liftTitle }) => liftTitle, "lifts")}
      </RuledTitle>
      {lifts.length > 0 && (
        <FewRows count={lifts.length} what="lifts">
          <Table
            label={`Callouts per lift, ${period}`}
            columns={columns}
            rows={lifts}
            rowKey={({ liftId }) => liftId}
            startSort={{ column: "count", falling: true }}
          />
        </FewRows>
      )}
      <p className="chart-caption">
        Counted, nothing more: a small difference may be chance. A callout to a wrong address counts for no
        lift.{" "}
        {unsettled.length > 0 && (
          <>
            <CalloutsLink ids={unsettled} title={`Callouts without a settled lift, ${period}`}>
              {unsettled.length}
            </CalloutsLink>{" "}
            {unsettled.length === 1 ? "callout is" : "callouts are"} not settled to a lift yet.{" "}
          </>
        )}
        {missingWords(yearBefore)}
      </p>
    </section>
  );
}

const liftColumn: TableColumn<LiftCount> = {
  id: "lift",
  head: "Lift",
  rowHead: true,
  sortBy: ({ liftTitle }) => liftTitle,
  sortWords: { rising: "A first", falling: "Z first" },
  cell: ({ liftId, liftTitle }) => (
    <Link to="/lift/$id" params={{ id: liftId }} className="review-name">
      {liftTitle}
    </Link>
  ),
};
