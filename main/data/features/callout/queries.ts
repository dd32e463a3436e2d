import { proposeFaultGroup } from "#shared-lib/fault-group-words.ts";
import { chainsByGroup, isWithinWindow, type RepeatCandidate } from "#shared-lib/repeats.ts";
import { repeatWindowDays } from "#shared-lib/words.ts";
import type { Handlers } from "../../context.ts";
import type { SqlValue, Store } from "../../store.ts";
import { findLiftLine } from "../lift/lift-lines.ts";
import {
  callersOfCalloutSql,
  calloutsOfLiftAndGroupSql,
  countCalloutsSql,
  type FilterCondition,
  filterConditions,
  listCalloutLinesSql,
  visitsOfCalloutSql,
} from "./callout.sql.ts";
import { calloutLines, findCalloutLine } from "./callout-lines.ts";
import { eventsOfCallout, toCallout, withdrawnEventsOfCallout } from "./callout-record.ts";

const linesShownBeside = 6;

/** Text between percent signs, with the signs of LIKE taken as they are typed. */
function likeText(text: string): string {
  return `%${text.replace(/[\\%_]/g, (sign) => `\\${sign}`)}%`;
}

function readFilter(filter: Readonly<Record<string, unknown>>): {
  conditions: FilterCondition[];
  parameters: Record<string, SqlValue>;
} {
  const conditions: FilterCondition[] = [];
  const parameters: Record<string, SqlValue> = {};
  for (const [name, value] of Object.entries(filter)) {
    if (value === undefined || value === "") continue;
    if (name === "open") conditions.push(value === true ? "open" : "closed");
    else if (name === "withoutCause") {
      if (value === true) conditions.push("withoutCause");
    } else if (name in filterConditions) {
      conditions.push(name as FilterCondition);
      parameters[name] =
        name === "ids" ? JSON.stringify(value) : name === "text" ? likeText(String(value)) : String(value);
    }
  }
  return { conditions, parameters };
}

/** Ids of the chain that a callout of this lift and group, received now, would stand in; oldest first. */
function runningChain(store: Store, liftId: string, group: string, now: string): string[] {
  const callouts = store.all<RepeatCandidate>(calloutsOfLiftAndGroupSql, { liftId, group });
  const last = callouts.at(-1);
  if (!last || group === "not yet known" || !isWithinWindow(last.receivedAt, now, repeatWindowDays))
    return [];
  const chain = chainsByGroup(callouts, repeatWindowDays).find(
    (candidates) => candidates.at(-1)?.id === last.id,
  );
  return (chain ?? [last]).map(({ id }) => id);
}

export const calloutQueries: Handlers<"callout.list" | "callout.find" | "callout.beside"> = {
  "callout.list"(context, { filter, order, offset, limit }) {
    const { conditions, parameters } = readFilter(filter);
    const total = context.store.get<{ total: number }>(countCalloutsSql(conditions), parameters)?.total ?? 0;
    const callouts = calloutLines(context.store, listCalloutLinesSql(conditions, order), {
      ...parameters,
      limit,
      offset,
    });
    return { callouts, total };
  },

  "callout.find"(context, { id }) {
    const callout = toCallout(context, context.records.find("callout", id));
    const line = findCalloutLine(context.store, id);
    const candidates = callout.liftId
      ? context.store.all<RepeatCandidate>(calloutsOfLiftAndGroupSql, {
          liftId: callout.liftId,
          group: callout.group,
        })
      : [];
    const chain =
      chainsByGroup(candidates, repeatWindowDays).find((callouts) => callouts.some((one) => one.id === id)) ??
      [];
    return {
      callout,
      line,
      lift: callout.liftId ? findLiftLine(context.store, callout.liftId) : null,
      events: eventsOfCallout(context.store, id),
      withdrawn: withdrawnEventsOfCallout(context.store, id),
      callers: context.store.all(callersOfCalloutSql, { calloutId: id }),
      chain: chain.map((one) => {
        const { number, receivedAt, said, cause, fix, ending } = findCalloutLine(context.store, one.id);
        return { id: one.id, number, receivedAt, said, endedHow: fix || cause || ending || "open" };
      }),
      visitIds: context.store
        .all<{ id: string }>(visitsOfCalloutSql, { calloutId: id })
        .map((visit) => visit.id),
    };
  },

  "callout.beside"(context, { liftId, said, group }) {
    const proposal = proposeFaultGroup(said);
    const proposed = { proposedGroup: proposal.group, because: [...proposal.because] };
    if (!liftId) return { ...proposed, lift: null, open: [], last: [], chain: [] };
    const list = (
      conditions: FilterCondition[],
      order: "people first" | "newest first",
      limit: number,
      more: Record<string, SqlValue> = {},
    ) => calloutLines(context.store, listCalloutLinesSql(conditions, order), { ...more, limit, offset: 0 });
    const chain = runningChain(context.store, liftId, group ?? proposal.group, context.now);
    return {
      ...proposed,
      lift: findLiftLine(context.store, liftId),
      open: list(["liftId", "open"], "people first", linesShownBeside, { liftId }),
      last: list(["liftId"], "newest first", linesShownBeside, { liftId }),
      chain:
        chain.length > 0 ? list(["ids"], "newest first", 50, { ids: JSON.stringify(chain) }).reverse() : [],
    };
  },
};
