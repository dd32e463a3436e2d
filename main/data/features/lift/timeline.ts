import type { TimelineEntry } from "#shared-lib/contract/lift.ts";
import type { Store } from "../../store.ts";
import {
  timelineBridgesSql,
  timelineCalculationsSql,
  timelineCalloutsSql,
  timelineChangesSql,
  timelineChecksSql,
  timelineDangersSql,
  timelineEventsSql,
  timelineVisitsSql,
} from "./lift.sql.ts";

interface Span {
  readonly liftId: string;
  readonly before: string;
  readonly limit: number;
}

type Row = Readonly<Record<string, string>>;

const eventMarks: Readonly<Record<string, string>> = {
  "passed on": "passed on",
  arrived: "on site",
  "people released": "people released",
  "made safe": "made safe",
  "back in service": "level",
  closed: "closed",
};

function entry(
  part: Partial<TimelineEntry> & Pick<TimelineEntry, "id" | "at" | "kind" | "mark" | "sentence">,
): TimelineEntry {
  return { second: "", by: "", opens: null, ...part };
}

function eventEntry(row: Row): TimelineEntry {
  const to = row.toName ? ` to ${row.toName}` : "";
  const ended = row.kind === "closed" && row.ending ? `: ${row.ending}` : "";
  return entry({
    id: `event ${row.id}`,
    at: row.at ?? "",
    kind: "event",
    mark: eventMarks[row.kind ?? ""] ?? "received",
    sentence: `${capital(row.kind ?? "")}${to}${ended}, callout ${row.number}`,
    second: row.note || (row.kind === "closed" ? (row.endingReason ?? "") : ""),
    by: row.personName ?? "",
    opens: `/callout/${row.calloutId}`,
  });
}

function bridgeEntries(row: Row): TimelineEntry[] {
  const place = `${row.contact}, ${row.points}`;
  const opens = `/lift/${row.liftId}`;
  const entries = [
    entry({
      id: `bridge set ${row.id}`,
      at: row.setAt ?? "",
      kind: "bridge",
      mark: "bridge",
      sentence: `Bridge ${row.number} set, ${place}`,
      second: `${row.reason}. Under ${row.control} control`,
      by: row.setByName ?? "",
      opens,
    }),
  ];
  if (row.removedAt) {
    entries.push(
      entry({
        id: `bridge removed ${row.id}`,
        at: row.removedAt,
        kind: "bridge",
        mark: "bridge",
        sentence: `Bridge ${row.number} taken out`,
        second: row.removalNote ?? "",
        by: row.removedByName ?? "",
        opens,
      }),
    );
  }
  if (row.checkedAt) {
    entries.push(
      entry({
        id: `bridge checked ${row.id}`,
        at: row.checkedAt,
        kind: "bridge",
        mark: "level",
        sentence: `Removal of bridge ${row.number} confirmed`,
        second: row.proof ?? "",
        by: row.checkedByName ?? "",
        opens,
      }),
    );
  }
  return entries;
}

function dangerEntries(row: Row): TimelineEntry[] {
  const found = entry({
    id: `danger ${row.id}`,
    at: row.foundAt ?? "",
    kind: "danger",
    mark: "bridge",
    sentence: "Car door and landing door found bridged together",
    second: row.words ?? "",
    by: row.foundByName ?? "",
  });
  if (!row.clearedAt) return [found];
  return [
    found,
    entry({
      id: `danger cleared ${row.id}`,
      at: row.clearedAt,
      kind: "danger",
      mark: "level",
      sentence: "Danger cleared",
      second: row.clearedHow ?? "",
      by: row.clearedByName ?? "",
    }),
  ];
}

function changeEntries(rows: readonly Row[]): TimelineEntry[] {
  const byStamp = new Map<string, Row[]>();
  for (const row of rows) byStamp.set(row.stamp ?? "", [...(byStamp.get(row.stamp ?? "") ?? []), row]);
  return [...byStamp.values()].flatMap((changes) => {
    const first = changes[0];
    if (!first) return [];
    const fields = changes.map((change) => change.field ?? "");
    const state = changes.find((change) => change.field === "state");
    const common = {
      id: `change ${first.id}`,
      at: (first.stamp ?? "").slice(0, 24),
      by: first.personName ?? "",
    };
    if (state) {
      const reason = changes.find((change) => change.field === "stateReason");
      return [
        entry({
          ...common,
          kind: "state",
          mark: state.value === '"in service"' ? "level" : "stepped",
          sentence: `Lift ${JSON.parse(state.value ?? '""')}`,
          second: reason ? String(JSON.parse(reason.value ?? '""')) : "",
        }),
      ];
    }
    if (fields.includes("*"))
      return [entry({ ...common, kind: "change", mark: "level", sentence: "Lift entered on the books" })];
    const told = fields.filter((field) => !field.startsWith("state"));
    return told.length === 0
      ? []
      : [
          entry({
            ...common,
            kind: "change",
            mark: "level",
            sentence: `Changed: ${told.map(fieldWords).join(", ")}`,
          }),
        ];
  });
}

/** "ratedSpeed" to "rated speed". */
function fieldWords(field: string): string {
  return field.replace(/[A-Z]/g, (letter) => ` ${letter.toLowerCase()}`);
}

function capital(text: string): string {
  return text.charAt(0).toUpperCase() + text.slice(1);
}

/** What happened on a lift, newest first, merged from the tables that know it. */
export function liftTimeline(store: Store, span: Span): TimelineEntry[] {
  const rows = (sql: string): Row[] => store.all<Row>(sql, { ...span });
  const entries = [
    ...rows(timelineCalloutsSql).map((row) =>
      entry({
        id: `callout ${row.id}`,
        at: row.receivedAt ?? "",
        kind: "callout",
        mark: "received",
        sentence: `Callout ${row.number}: “${row.said}”`,
        opens: `/callout/${row.id}`,
      }),
    ),
    ...rows(timelineEventsSql).map(eventEntry),
    ...rows(timelineVisitsSql).map((row) =>
      entry({
        id: `visit ${row.id}`,
        at: row.arrivedAt ?? "",
        kind: "visit",
        mark: row.cause ? "recorded fix" : "on site",
        sentence: row.cause
          ? `Cause: ${row.cause}`
          : `Visit (${row.kind}): ${row.found || row.done || "nothing written yet"}`,
        second: row.fix ? `Fix: ${row.fix}` : (row.done ?? ""),
        by: row.personName ?? "",
        opens: `/visit/${row.id}`,
      }),
    ),
    ...rows(timelineBridgesSql).flatMap(bridgeEntries),
    ...rows(timelineDangersSql).flatMap(dangerEntries),
    ...rows(timelineChecksSql).map((row) =>
      entry({
        id: `check ${row.id}`,
        at: row.startedAt ?? "",
        kind: "check",
        mark: Number(row.failed) > 0 ? "stepped" : "level",
        sentence: `Signal check: ${row.planName}, ${row.passed} passed, ${row.failed} failed, ${Number(row.steps) - Number(row.passed) - Number(row.failed)} unchecked`,
        by: row.personName ?? "",
        opens: `/checks/${row.id}`,
      }),
    ),
    ...rows(timelineCalculationsSql).map((row) =>
      entry({
        id: `calculation ${row.id}`,
        at: row.at ?? "",
        kind: "calculation",
        mark: "calculator",
        sentence: `${row.verdictWord}. ${row.verdictSentence}`,
        by: row.personName ?? "",
        opens: `/bench/${row.calculatorId}`,
      }),
    ),
    ...changeEntries(rows(timelineChangesSql)),
  ];
  return entries
    .sort((a, b) => (a.at < b.at ? 1 : a.at > b.at ? -1 : a.id < b.id ? 1 : -1))
    .slice(0, span.limit);
}
