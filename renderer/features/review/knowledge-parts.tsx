import { Link } from "@tanstack/react-router";
import { useMemo } from "react";
import type { OutputOf } from "#shared-lib/contract/operations.ts";
import type { NoteStatus } from "#shared-lib/words.ts";
import { type MarkKind, MarkShape } from "../../ui/mark.tsx";
import { RuledTitle } from "../../ui/ruled-title.tsx";
import { Table, type TableColumn } from "../../ui/table.tsx";
import { SaveList } from "../export/save-list-panel.tsx";
import { CalloutsLink } from "./callouts-link.tsx";
import { FewRows } from "./few-rows.tsx";
import { sentenceCase } from "./review-words.ts";
import type { Review } from "./use-review.ts";

type WithoutCause = OutputOf<"review.withoutCause">;
type Ending = WithoutCause["endings"][number];
type UsedNote = OutputOf<"review.notesUsed">["notes"][number];

interface PartProps {
  /** "18 Nov 2025 to 17 Nov 2026" */
  readonly period: string;
  /** What the counts are asked with. */
  readonly asked: Review["period"];
}

/** Closed callouts that say nothing of what was wrong, by how they ended. */
export function WithoutCausePart({ period, asked, found }: PartProps & { readonly found: WithoutCause }) {
  const { closed, calloutIds, endings } = found;
  const columns = useMemo(() => endingColumns(period), [period]);
  if (closed === 0) return <RuledTitle>No callout was closed in this time</RuledTitle>;
  const missing = calloutIds.length;
  return (
    <section className="review-beside">
      <RuledTitle aside={<SaveList list="closed without a cause" input={asked} />}>
        {missing === 0
          ? `Each of ${closed} closed callouts has a cause`
          : `${missing} of ${closed} closed callouts have no cause`}
      </RuledTitle>
      <div className="review-rows">
        <Table
          label={`Callouts closed without a recorded cause, by ending, ${period}`}
          columns={columns}
          rows={endings}
          rowKey={({ ending }) => ending}
          startSort={{ column: "missing", falling: true }}
        />
      </div>
      <p className="chart-caption">
        Closed in this time, whenever they were received. A repair without a cause teaches nobody; nothing
        found, cancelled or a wrong address may rightly have none.
      </p>
    </section>
  );
}

function endingColumns(period: string): readonly TableColumn<Ending>[] {
  const sortWords = { rising: "fewest first", falling: "most first" };
  return [
    {
      id: "ending",
      head: "Ended as",
      rowHead: true,
      cell: ({ ending }) => sentenceCase(ending),
    },
    {
      id: "missing",
      head: "Without a cause",
      number: true,
      sortBy: ({ calloutIds }) => calloutIds.length,
      sortWords,
      cell: ({ ending, calloutIds }) => (
        <CalloutsLink ids={calloutIds} title={`${sentenceCase(ending)}, no cause recorded, ${period}`} inCell>
          {calloutIds.length}
        </CalloutsLink>
      ),
    },
    {
      id: "closed",
      head: "Closed",
      number: true,
      sortBy: ({ closedIds }) => closedIds.length,
      sortWords,
      cell: ({ ending, closedIds }) => (
        <CalloutsLink ids={closedIds} title={`${sentenceCase(ending)}, closed ${period}`} inCell>
          {closedIds.length}
        </CalloutsLink>
      ),
    },
  ];
}

const noteMarks: { readonly [Status in NoteStatus]: MarkKind } = {
  draft: "note draft",
  confirmed: "note confirmed",
  withdrawn: "note withdrawn",
};

/** Which fault notes ended callouts, the most used first. */
export function NotesUsedPart({ period, asked, notes }: PartProps & { readonly notes: readonly UsedNote[] }) {
  const columns = useMemo(() => noteColumns(period), [period]);
  const [most] = notes;
  return (
    <section className="review-beside">
      <RuledTitle aside={most !== undefined && <SaveList list="fault notes used" input={asked} />}>
        {most === undefined
          ? "No fault note ended a callout in this time"
          : `${notes.length} fault ${notes.length === 1 ? "note" : "notes"} ended callouts`}
      </RuledTitle>
      {most !== undefined && (
        <FewRows count={notes.length} what="fault notes">
          <Table
            label={`Fault notes used, ${period}`}
            columns={columns}
            rows={notes}
            rowKey={({ id }) => id}
            startSort={{ column: "callouts", falling: true }}
          />
        </FewRows>
      )}
      <p className="chart-caption">Callouts closed in this time whose recorded fix belongs to the note.</p>
    </section>
  );
}

function noteColumns(period: string): readonly TableColumn<UsedNote>[] {
  return [
    {
      id: "note",
      head: "Fault note",
      rowHead: true,
      sortBy: ({ title }) => title,
      sortWords: { rising: "A first", falling: "Z first" },
      cell: ({ id, title }) => (
        <Link to="/note/$id" params={{ id }} className="review-name">
          {title}
        </Link>
      ),
    },
    {
      id: "status",
      head: "Status",
      sortBy: ({ status }) => status,
      cell: ({ status }) => (
        <span className="marked nowrap">
          <MarkShape kind={noteMarks[status]} />
          {sentenceCase(status)}
        </span>
      ),
    },
    {
      id: "callouts",
      head: "Callouts",
      number: true,
      sortBy: ({ inPeriod }) => inPeriod,
      sortWords: { rising: "fewest first", falling: "most first" },
      cell: ({ title, inPeriod, calloutIds }) => (
        <CalloutsLink ids={calloutIds} title={`Ended by “${title}”, ${period}`} inCell>
          {inPeriod}
        </CalloutsLink>
      ),
    },
  ];
}
