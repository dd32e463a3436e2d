import type { CalloutLine } from "../contract/callout.ts";
import type { TimelineEntry } from "../contract/lift.ts";
import type { InputOf } from "../contract/operations.ts";
import type { Ask } from "../import/bring-in-table.ts";
import { day, moment, number, pagedList, text } from "./export-list.ts";

interface CalloutRow extends CalloutLine {
  readonly site: string;
  readonly lift: string;
}

/** Half a second of work at a hundred thousand callouts: screens that ask meanwhile do not wait longer. */
const calloutsAtOnce = 1000;
const entriesAtOnce = 1000;

/** Site and lift stand apart, under heads that the import knows: the table can be brought in elsewhere. */
export const calloutList = pagedList<Omit<InputOf<"callout.list">, "offset" | "limit">, CalloutRow>(
  "Callouts",
  [
    text("Number", 12, (row) => row.number),
    moment("Received", (row) => row.receivedAt),
    text("Site", 26, (row) => row.site),
    text("Lift", 16, (row) => row.lift),
    text("What was said", 44, (row) => row.said),
    text("Fault group", 24, (row) => row.group),
    text("State", 16, (row) => row.state),
    text("With", 18, (row) => row.engineer?.name ?? ""),
    text("Inside", 14, (row) => row.inside),
    number("People inside", (row) => row.insideCount),
    text("Call back", 18, (row) => row.callBack),
    moment("Ended", (row) => row.endedAt),
    text("Ended as", 20, (row) => row.ending),
    text("Waits for", 14, (row) => row.awaits),
    day("Return visit", (row) => row.returnVisitOn),
    text("Cause", 36, (row) => row.cause),
    text("Fix", 36, (row) => row.fix),
    number("Repeat", (row) => row.repeat),
  ],
  readCallouts,
);

async function* readCallouts(ask: Ask, input: Omit<InputOf<"callout.list">, "offset" | "limit">) {
  const { lifts } = await ask("lift.list", {});
  const byId = new Map(lifts.map((lift) => [lift.id, lift]));
  // A callout that comes in meanwhile moves the others on: none is written twice.
  const seen = new Set<string>();
  for (let offset = 0; ; offset += calloutsAtOnce) {
    const { callouts, total } = await ask("callout.list", {
      order: "newest first",
      ...input,
      offset,
      limit: calloutsAtOnce,
    });
    const fresh = callouts.filter(({ id }) => !seen.has(id));
    for (const { id } of fresh) seen.add(id);
    const rows = fresh.map((line) => {
      const lift = line.liftId === null ? undefined : byId.get(line.liftId);
      return { ...line, site: lift?.siteName ?? "", lift: lift?.name ?? line.liftTitle };
    });
    yield { rows, of: total };
    if (offset + calloutsAtOnce >= total || callouts.length === 0) return;
  }
}

export const timelineList = pagedList<{ readonly id: string }, TimelineEntry>(
  "Timeline",
  [
    moment("When", (entry) => entry.at),
    text("Kind", 12, (entry) => entry.kind),
    text("What happened", 60, (entry) => entry.sentence),
    text("More", 44, (entry) => entry.second),
    text("By", 18, (entry) => entry.by),
  ],
  async function* (ask, { id }) {
    const seen = new Set<string>();
    let before: string | undefined;
    for (;;) {
      const { entries } = await ask("lift.timeline", {
        id,
        limit: entriesAtOnce,
        ...(before === undefined ? {} : { before }),
      });
      const rows = entries.filter((entry) => !seen.has(entry.id));
      for (const entry of rows) seen.add(entry.id);
      if (rows.length > 0) yield { rows, of: null };
      const last = entries.at(-1)?.at;
      if (entries.length < entriesAtOnce || last === undefined || rows.length === 0) return;
      // What happened in the same millisecond as the last entry may be on the next page.
      before = new Date(Date.parse(last) + 1).toISOString();
    }
  },
);
