import type { TableColumn } from "../../ui/table.tsx";
import { CalloutsLink } from "./callouts-link.tsx";
import { differenceWords } from "./review-words.ts";

interface Count {
  readonly count: number;
  readonly yearBefore: number;
  readonly calloutIds: readonly string[];
  readonly yearBeforeIds: readonly string[];
}

/** Callouts, a year before and the difference in words; without the comparison where nothing is on record. */
export function countColumns<Row extends Count>(given: {
  readonly period: string;
  readonly compared: boolean;
  readonly titleOf: (row: Row) => string;
}): readonly TableColumn<Row>[] {
  const { period, compared, titleOf } = given;
  const sortWords = { rising: "fewest first", falling: "most first" };
  const count: TableColumn<Row> = {
    id: "count",
    head: "Callouts",
    number: true,
    sortBy: (row) => row.count,
    sortWords,
    cell: (row) => (
      <CalloutsLink ids={row.calloutIds} title={`${titleOf(row)}: callouts, ${period}`} inCell>
        {row.count}
      </CalloutsLink>
    ),
  };
  if (!compared) return [count];
  return [
    count,
    {
      id: "before",
      head: "Year before",
      number: true,
      sortBy: (row) => row.yearBefore,
      sortWords,
      cell: (row) => (
        <CalloutsLink
          ids={row.yearBeforeIds}
          title={`${titleOf(row)}: callouts, the year before ${period}`}
          inCell
        >
          {row.yearBefore}
        </CalloutsLink>
      ),
    },
    {
      id: "difference",
      head: "Difference",
      number: true,
      sortBy: (row) => row.count - row.yearBefore,
      sortWords: { rising: "fewer first", falling: "more first" },
      cell: (row) => differenceWords(row.count, row.yearBefore),
    },
  ];
}
