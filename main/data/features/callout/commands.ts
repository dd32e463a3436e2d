import { errorWords, SillbookError } from "#shared-lib/errors.ts";
import type { EventKind } from "#shared-lib/words.ts";
import { type Context, type Handlers, signerOf } from "../../context.ts";
import type { StoredRecord } from "../../record-store.ts";
import { laterOf, refuseFutureTime } from "../../times.ts";
import { effectiveEventsSql, isEffectiveSql, openDangerOfLiftSql } from "./callout.sql.ts";
import { endingReasonOf, insertEarlierEvents, isStillPast, refuseLiveEntrapment } from "./earlier-record.ts";
import { refuseEarlyRelease, refuseImpossibleTime } from "./event-times.ts";
import { setLiftState } from "./lift-state.ts";

export interface NewEvent {
  readonly kind: EventKind;
  readonly at: string;
  readonly toId?: string | null;
  readonly note?: string;
  readonly registerComparedBy?: string | null;
}

export function insertEvent(context: Context, callout: { id: string }, event: NewEvent): string {
  return context.records.insert("callout event", {
    calloutId: callout.id,
    kind: event.kind,
    at: event.at,
    personId: context.person?.id ?? null,
    toId: event.toId ?? null,
    note: event.note ?? "",
    registerComparedBy: event.registerComparedBy ?? null,
    corrects: null,
    withdrawn: false,
    earlierRecord: false,
  }).id;
}

/** An open danger blocks every step but getting people out, making safe and getting there. */
export function refuseWhileDanger(context: Context, liftId: unknown, allowed = false): void {
  if (allowed || typeof liftId !== "string") return;
  const danger = context.store.get<{ words: string }>(openDangerOfLiftSql, { liftId });
  if (danger)
    throw new SillbookError("danger-open", `${errorWords["danger-open"]} Found: ${danger.words}`, { liftId });
}

const eventsAllowedInDanger: ReadonlySet<EventKind> = new Set([
  "passed on",
  "arrived",
  "people released",
  "made safe",
]);

function openCallout(context: Context, id: string): StoredRecord {
  const callout = context.records.find("callout", id);
  if (callout.endedAt)
    throw new SillbookError("state-refused", `Callout ${callout.number} is closed. Open it again first.`, {
      id,
    });
  return callout;
}

export const calloutCommands: Handlers<
  | "callout.log"
  | "callout.join"
  | "callout.change"
  | "callout.recordEvent"
  | "callout.correctEvent"
  | "callout.withdrawEvent"
  | "callout.end"
  | "callout.reopen"
  | "callout.bringIn"
> = {
  "callout.log"(context, { receivedAt, passTo, group, ...fields }) {
    const at = receivedAt ?? context.now;
    refuseFutureTime(at, context.now);
    refuseUnnamedLift(context, fields.liftId, fields.liftWords);
    const number = context.device.calloutNumber();
    const saved = context.records.insert("callout", {
      ...fields,
      number,
      receivedAt: at,
      faultGroup: group,
      groupSettled: false,
      endingReason: "",
      engineerId: passTo,
      earlierRecord: false,
    });
    insertEvent(context, saved, { kind: "received", at });
    if (passTo) {
      context.records.find("person", passTo);
      insertEvent(context, saved, {
        kind: "passed on",
        at: laterOf(at, context.now),
        toId: passTo,
      });
    }
    if (fields.inside === "people inside")
      takeOutOfService(context, fields.liftId, at, `People inside, callout ${number}`);
    return { ...saved, number };
  },

  "callout.join"(context, { id, ...caller }) {
    const callout = openCallout(context, id);
    context.records.insert("caller", {
      ...caller,
      calloutId: id,
      at: context.now,
      personId: signerOf(context).id,
    });
    return { id, version: callout.version };
  },

  "callout.change"(context, { id, version, fields: { group, ...fields } }) {
    const callout = context.records.findAtVersion("callout", id, version);
    const liftId = fields.liftId === undefined ? (callout.liftId as string | null) : fields.liftId;
    refuseUnnamedLift(context, liftId, fields.liftWords ?? (callout.liftWords as string));
    const earlierRecord = isStillPast(callout, fields.inside ?? callout.inside, callout.endedAt === null);
    const saved = context.records.update("callout", callout, {
      ...fields,
      ...(group ? { faultGroup: group } : {}),
      ...insideSinceOf(callout, fields.inside, context.now),
      earlierRecord,
    });
    if (
      fields.inside === "people inside" ||
      (callout.inside === "people inside" && liftId !== callout.liftId)
    ) {
      if (!callout.endedAt)
        takeOutOfService(context, liftId, context.now, `People inside, callout ${callout.number}`);
    }
    return saved;
  },

  "callout.recordEvent"(context, { id, kind, at, to, note, registerComparedBy }) {
    const callout = openCallout(context, id);
    const moment = at ?? context.now;
    refuseImpossibleTime(moment, callout.receivedAt as string, context.now);
    refuseWhileDanger(context, callout.liftId, eventsAllowedInDanger.has(kind));
    if (kind === "people released") refuseEarlyRelease(moment, callout.insideSince as string | null);
    if (kind === "passed on") {
      if (!to) {
        throw new SillbookError("input-invalid", "Say to whom it is passed on.", {
          fields: [{ path: ["to"], message: "Say to whom." }],
        });
      }
      context.records.find("person", to);
    }
    if (kind === "back in service") {
      if (!registerComparedBy) throw new SillbookError("register-not-compared");
      context.records.find("person", registerComparedBy);
    }
    const eventId = insertEvent(context, callout, { kind, at: moment, toId: to, note, registerComparedBy });
    const engineerId =
      kind === "passed on" ? to : kind === "arrived" ? (to ?? callout.engineerId) : callout.engineerId;
    const saved = context.records.update("callout", callout, { engineerId: engineerId as string | null });
    if (kind === "made safe")
      takeOutOfService(context, callout.liftId, moment, note || `Made safe, callout ${callout.number}`);
    if (kind === "back in service" && typeof callout.liftId === "string") {
      setLiftState(context, callout.liftId, {
        state: "in service",
        reason: "",
        since: moment,
        comparedBy: registerComparedBy,
      });
    }
    return { ...saved, eventId };
  },

  "callout.correctEvent"(context, { eventId, at, note }) {
    const event = effectiveEvent(context, eventId);
    const callout = context.records.find("callout", event.calloutId as string);
    if (event.kind === "received") {
      refuseFutureTime(at, context.now);
    } else {
      refuseImpossibleTime(at, callout.receivedAt as string, context.now);
    }
    const correction = correct(context, event, {
      at,
      note: note || (event.note as string),
      withdrawn: false,
    });
    if (event.kind === "received") context.records.update("callout", callout, { receivedAt: at });
    if (event.kind === "closed") context.records.update("callout", callout, { endedAt: at });
    followCorrectedState(context, event, callout.liftId, at);
    return { eventId: correction };
  },

  "callout.withdrawEvent"(context, { eventId, reason }) {
    const event = effectiveEvent(context, eventId);
    if (event.kind === "received" || event.kind === "closed") {
      throw new SillbookError(
        "state-refused",
        event.kind === "closed" ? "Open the callout again instead." : "A callout without its call cannot be.",
      );
    }
    const correction = correct(context, event, { at: event.at as string, note: reason, withdrawn: true });
    if (event.kind === "back in service") {
      const callout = context.records.find("callout", event.calloutId as string);
      takeOutOfService(
        context,
        callout.liftId,
        context.now,
        `Back in service was recorded by mistake: ${reason}`,
      );
    }
    return { eventId: correction };
  },

  "callout.end"(context, { id, version, ending, group, reason, awaits, returnVisitOn, at }) {
    const callout = context.records.findAtVersion("callout", id, version);
    if (callout.endedAt)
      throw new SillbookError("state-refused", `Callout ${callout.number} is closed already.`, { id });
    const moment = at ?? context.now;
    refuseImpossibleTime(moment, callout.receivedAt as string, context.now);
    refuseWhileDanger(context, callout.liftId);
    const lift = typeof callout.liftId === "string" ? context.records.find("lift", callout.liftId) : null;
    refuseContradiction(ending, reason, lift);
    insertEvent(context, callout, { kind: "closed", at: moment, note: reason });
    const saved = context.records.update("callout", callout, {
      ending,
      faultGroup: group,
      groupSettled: true,
      endingReason: reason,
      awaits,
      returnVisitOn,
      endedAt: moment,
    });
    if (ending === "left out of service" && lift) {
      const until = awaits ? `${reason} (awaits ${awaits})` : reason;
      takeOutOfService(context, lift.id, moment, until);
    }
    return saved;
  },

  "callout.reopen"(context, { id, version, reason }) {
    const callout = context.records.findAtVersion("callout", id, version);
    if (!callout.endedAt)
      throw new SillbookError("state-refused", `Callout ${callout.number} is open.`, { id });
    const closed = context.store
      .all<{ id: string; kind: string }>(effectiveEventsSql, { calloutId: id })
      .find((event) => event.kind === "closed");
    if (closed) {
      const event = context.records.find("callout event", closed.id);
      correct(context, event, { at: event.at as string, note: `Opened again: ${reason}`, withdrawn: true });
    }
    return context.records.update("callout", callout, {
      earlierRecord: isStillPast(callout, callout.inside, true),
      ending: null,
      endedAt: null,
      endingReason: "",
      awaits: null,
      returnVisitOn: null,
    });
  },

  "callout.bringIn"(
    context,
    { liftId, said, group, receivedAt, backInServiceAt, cause, fix, inside, ending, endNotKnown },
  ) {
    context.records.find("lift", liftId);
    refuseLiveEntrapment(inside, backInServiceAt, endNotKnown);
    refuseFutureTime(receivedAt, context.now);
    if (backInServiceAt && backInServiceAt < receivedAt)
      refuseImpossibleTime(backInServiceAt, receivedAt, context.now);
    const number = context.device.calloutNumber();
    const saved = context.records.insert("callout", {
      number,
      liftId,
      liftWords: "",
      said,
      faultGroup: group,
      inside,
      insideCondition: "",
      caller: "",
      callBack: "",
      displayReading: "",
      receivedAt,
      groupSettled: true,
      ending: backInServiceAt || endNotKnown ? ending : null,
      endingReason: endingReasonOf(backInServiceAt, endNotKnown),
      endedAt: backInServiceAt ?? (endNotKnown ? receivedAt : null),
      earlierRecord: true,
    });
    insertEarlierEvents(context, saved.id, receivedAt, backInServiceAt);
    if (cause && fix) {
      context.records.insert("recorded fix", {
        liftId,
        calloutId: saved.id,
        visitId: null,
        cause,
        fix,
        faultGroup: group,
        at: backInServiceAt ?? receivedAt,
        personId: null,
        noteId: null,
        causeKey: null,
      });
    }
    return { ...saved, number };
  },
};

/** People reported after the call wait since that report; a release before it was not theirs. */
function insideSinceOf(
  callout: StoredRecord,
  inside: string | undefined,
  now: string,
): { insideSince?: string | null } {
  if (inside === undefined || inside === callout.inside) return {};
  return { insideSince: inside === "people inside" && callout.endedAt === null ? now : null };
}

function refuseUnnamedLift(context: Context, liftId: string | null, liftWords: string): void {
  if (liftId) {
    context.records.find("lift", liftId);
    return;
  }
  if (liftWords !== "") return;
  throw new SillbookError("input-invalid", "Say which lift, or write down what the caller calls it.", {
    fields: [{ path: ["liftId"], message: "Choose a lift, or write what the caller calls it." }],
  });
}

function refuseContradiction(ending: string, reason: string, lift: StoredRecord | null): void {
  if (ending === "left out of service" && reason === "") {
    throw new SillbookError("input-invalid", "Say why the lift is left out of service.", {
      fields: [{ path: ["reason"], message: "Say why." }],
    });
  }
  const saysRunning = ending === "repaired" || ending === "nothing found";
  if (saysRunning && lift?.state === "out of service") {
    throw new SillbookError(
      "state-refused",
      "The lift is recorded as out of service. Record back in service first, or end the callout as left out of service.",
      { liftId: lift.id },
    );
  }
}

function takeOutOfService(context: Context, liftId: unknown, since: string, reason: string): void {
  if (typeof liftId !== "string") return;
  setLiftState(context, liftId, { state: "out of service", reason, since, comparedBy: null });
}

function effectiveEvent(context: Context, eventId: string): StoredRecord {
  const event = context.records.find("callout event", eventId);
  if (!context.store.get(isEffectiveSql, { id: eventId })) {
    throw new SillbookError(
      "version-conflict",
      "That event was corrected already. Look at the newest time.",
      { eventId },
    );
  }
  return event;
}

function correct(
  context: Context,
  event: StoredRecord,
  change: { at: string; note: string; withdrawn: boolean },
): string {
  const { id, version: _version, createdAt: _createdAt, deleted: _deleted, ...fields } = event;
  return context.records.insert("callout event", {
    ...(fields as Record<string, string>),
    ...change,
    corrects: id,
    personId: signerOf(context).id,
  }).id;
}

/** Where the lift's present state came from this event, its time follows the correction. */
function followCorrectedState(context: Context, event: StoredRecord, liftId: unknown, at: string): void {
  if (typeof liftId !== "string") return;
  const lift = context.records.find("lift", liftId);
  const settledBy = event.kind === "back in service" || event.kind === "made safe";
  if (settledBy && lift.stateSince === event.at) context.records.update("lift", lift, { stateSince: at });
}
