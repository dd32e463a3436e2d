import type { SqliteFile } from "../../../../main/data/sqlite-disk/sqlite-file.ts";

type Row = Readonly<Record<string, string | number | null>>;

interface Rows {
  readonly lifts: readonly Row[];
  readonly callouts: readonly Row[];
  readonly events: readonly Row[];
  readonly bridges: readonly Row[];
  readonly dangers: readonly Row[];
}

const minute = (moment: unknown): string => String(moment).slice(0, 16);

/** Events that nobody corrected or took back since. */
function effective(events: readonly Row[]): Row[] {
  const corrected = new Set(events.map((event) => event.corrects));
  return events.filter((event) => event.withdrawn === 0 && !corrected.has(event.id));
}

/** Minute from which people are inside: a later report of them, else the call. */
function insideFrom(callout: Row): string {
  return minute(callout.insideSince ?? callout.receivedAt);
}

/** Minute of the last release of a callout's people since they were reported; null while they are inside. */
function releasedAt(callout: Row, events: readonly Row[]): string | null {
  const releases = events
    .filter((event) => event.calloutId === callout.id && event.kind === "people released")
    .map((event) => minute(event.at))
    .filter((at) => at >= insideFrom(callout))
    .sort();
  return releases.at(-1) ?? null;
}

/** A closed record from before Sillbook tells of people who are long out, whether or not that was written down. */
const isPast = (callout: Row): boolean => callout.earlierRecord === 1 && callout.endedAt !== null;

/** Nobody knows whether somebody is inside: then it is not over, and the lift not back by this callout. */
function wrongsOfUnknown(callout: Row, events: readonly Row[]): string[] {
  if (callout.inside !== "not known" || isPast(callout)) return [];
  const back = events.some((event) => event.calloutId === callout.id && event.kind === "back in service");
  return [
    ...(callout.endedAt !== null ? [`${callout.number} ended, not known whether anyone was inside`] : []),
    ...(callout.deleted === 1 ? [`${callout.number} deleted, not known whether anyone was inside`] : []),
    ...(back && callout.liftId !== null
      ? [`${callout.number} back in service, not known who was inside`]
      : []),
  ];
}

function wrongsOfCallout(callout: Row, rows: Rows, events: readonly Row[]): string[] {
  if (callout.inside !== "people inside" || isPast(callout)) return [];
  const released = releasedAt(callout, events);
  const wrongs: string[] = [];
  if (released === null && callout.endedAt !== null)
    wrongs.push(`${callout.number} ended with people inside`);
  if (released === null && callout.deleted === 1) wrongs.push(`${callout.number} deleted with people inside`);
  if (released !== null && callout.endedAt !== null && minute(callout.endedAt) < released)
    wrongs.push(`${callout.number} ended before its people were released`);
  if (callout.liftId === null) return wrongs;
  const ofLift = new Set(
    rows.callouts.filter((other) => other.liftId === callout.liftId).map(({ id }) => id),
  );
  for (const event of events) {
    if (event.kind !== "back in service" || !ofLift.has(event.calloutId ?? null)) continue;
    const at = minute(event.at);
    if (at > insideFrom(callout) && (released === null || at < released))
      wrongs.push(`back in service at ${at} while the people of ${callout.number} were inside`);
  }
  const lift = rows.lifts.find(({ id }) => id === callout.liftId);
  if (released === null && lift?.state !== "out of service")
    wrongs.push(`${lift?.state} with the people of ${callout.number} inside`);
  return wrongs;
}

/** From being set or found until confirmed out or cleared; `end` null is still so. */
function wrongsOfInterval(
  name: string,
  row: Row,
  start: unknown,
  end: unknown,
  rows: Rows,
  events: readonly Row[],
) {
  const wrongs: string[] = [];
  const within = (moment: unknown): boolean =>
    minute(moment) >= minute(start) && (end === null || minute(moment) < minute(end));
  const lift = rows.lifts.find(({ id }) => id === row.liftId);
  if (lift && lift.state !== "out of service") {
    if (end === null) wrongs.push(`${lift.state} with an open ${name}`);
    if (lift.stateSince !== null && within(lift.stateSince))
      wrongs.push(`${lift.state} since a time with a ${name}`);
  }
  const ofLift = new Set(
    rows.callouts.filter((callout) => callout.liftId === row.liftId).map(({ id }) => id),
  );
  for (const event of events) {
    if (event.kind === "back in service" && ofLift.has(event.calloutId ?? null) && within(event.at))
      wrongs.push(`back in service at ${minute(event.at)} with a ${name}`);
  }
  return wrongs;
}

/**
 * Everything in the database that the safety rule forbids, in words; empty when all is well. Written without a look at
 * the rule's own statements: rows as they lie in the tables, and plain comparisons by the minute.
 * @param since only rows made after the one with this id: ids grow with time
 */
export function safetyWrongs(file: SqliteFile, since: string): string[] {
  const read = (table: string): Row[] => file.all<Row>(`SELECT * FROM ${table} WHERE id > :since`, { since });
  const rows: Rows = {
    lifts: read("lift"),
    callouts: read("callout"),
    events: read("calloutEvent"),
    bridges: read("bridge"),
    dangers: read("danger"),
  };
  const events = effective(rows.events);
  return [
    ...rows.callouts.flatMap((callout) => wrongsOfUnknown(callout, events)),
    ...rows.callouts.flatMap((callout) => wrongsOfCallout(callout, rows, events)),
    ...rows.bridges.flatMap((row) =>
      wrongsOfInterval("bridge", row, row.setAt, row.checkedAt ?? null, rows, events),
    ),
    ...rows.dangers.flatMap((row) =>
      wrongsOfInterval("danger", row, row.foundAt, row.clearedAt ?? null, rows, events),
    ),
  ];
}
