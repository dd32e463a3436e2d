import { useNavigate } from "@tanstack/react-router";
import { useMemo, useState } from "react";
import { ChartFrame } from "../../ui/chart-frame.tsx";
import { RuledTitle } from "../../ui/ruled-title.tsx";
import { Table, type TableColumn } from "../../ui/table.tsx";
import { SaveList } from "../export/save-list-panel.tsx";
import { calloutsPlace } from "./callouts-place.ts";
import { countColumns } from "./count-columns.tsx";
import { fewRows, MoreButton } from "./few-rows.tsx";
import { GroupBars } from "./group-bars.tsx";
import { type Counts, missingWords, mostWords, periodWords, sentenceCase } from "./review-words.ts";
import type { Review } from "./use-review.ts";

type GroupCount = Counts["groups"][number];

/** Callouts per fault group as bars; each opens its callouts. */
export function GroupsPart({ review, counts }: { readonly review: Review; readonly counts: Counts }) {
  const [all, setAll] = useState(false);
  const navigate = useNavigate();
  const { groups } = counts;
  const { yearBefore, days } = review;
  const period = periodWords(days);
  const compared = yearBefore.kind !== "none";
  const title = mostWords(groups, ({ group }) => group, "fault groups");
  if (groups.length === 0) return <RuledTitle>{title}</RuledTitle>;
  return (
    <ChartFrame
      title={title}
      fileName={`fault-groups-${days.from}-${days.until}`}
      acts={<SaveList list="counts per fault group" input={review.period} />}
      caption={
        <p>
          {compared ? "Filled: this time. Hatched: the year before. " : "Bars: callouts in this time. "}
          Cancelled callouts and those to a wrong address count as they were logged.{" "}
          {missingWords(yearBefore)}
        </p>
      }
      table={<GroupTable groups={groups} period={period} compared={compared} />}
    >
      <GroupBars
        label={`Callouts per fault group, ${period}`}
        bars={(all ? groups : groups.slice(0, fewRows)).map(({ group, count, yearBefore: before }) => ({
          id: group,
          title: sentenceCase(group),
          count,
          yearBefore: compared ? before : null,
        }))}
        onChoose={(id) => {
          const row = groups.find(({ group }) => group === id);
          if (row === undefined) return;
          void navigate(calloutsPlace(row.calloutIds, `${sentenceCase(row.group)}: callouts, ${period}`));
        }}
      />
      {groups.length > fewRows && (
        <MoreButton all={all} onAll={setAll} words={`All ${groups.length} fault groups`} />
      )}
    </ChartFrame>
  );
}

const groupColumn: TableColumn<GroupCount> = {
  id: "group",
  head: "Fault group",
  rowHead: true,
  sortBy: ({ group }) => group,
  sortWords: { rising: "A first", falling: "Z first" },
  cell: ({ group }) => sentenceCase(group),
};

function GroupTable(props: {
  readonly groups: readonly GroupCount[];
  readonly period: string;
  readonly compared: boolean;
}) {
  const { groups, period, compared } = props;
  const columns = useMemo(
    () => [
      groupColumn,
      ...countColumns<GroupCount>({ period, compared, titleOf: ({ group }) => sentenceCase(group) }),
    ],
    [period, compared],
  );
  return (
    <div className="review-rows">
      <Table
        label={`Callouts per fault group, ${period}`}
        columns={columns}
        rows={groups}
        rowKey={({ group }) => group}
        startSort={{ column: "count", falling: true }}
      />
    </div>
  );
}
