import type { BatchAsk } from "../data-core.ts";
import type { PlannedCallout } from "./planned-callout.ts";

export interface Signers {
  readonly office: { id: string; name: string };
  readonly engineer: (id: string) => { id: string; name: string };
  /** Id of a starter note by its key. */
  readonly noteId: (key: string) => string | null;
}

/** Something that happens at a moment; the demonstration plays all of them in the order of their times. */
export interface Happening {
  readonly at: number;
  readonly happen: (ask: BatchAsk) => void;
}

const minute = 60_000;
const reached = ["received", "passed on", "arrived", "made safe", "closed"] as const;

interface PlayedIds {
  calloutId: string;
  visitId: string;
}

/** The happenings of a callout, one after another through the ordinary operations. */
export function playCallout(
  plan: PlannedCallout,
  signers: Signers,
  afterwards?: (ids: { calloutId: string }) => void,
): Happening[] {
  const until = reached.indexOf(plan.until ?? "closed");
  const ids: PlayedIds = { calloutId: "", visitId: "" };
  const at = (minutes: number): number => plan.receivedAt + minutes * minute;
  const call: Happening = {
    at: at(0),
    happen: (ask) => {
      ids.calloutId = logCall(ask, plan, signers.office);
      afterwards?.(ids);
    },
  };
  if (plan.ending === "cancelled" || plan.ending === "wrong address") {
    return [
      call,
      { at: at(plan.passedAfter + 5), happen: (ask) => end(ask, plan, ids.calloutId, signers.office) },
    ];
  }
  return [
    call,
    ...eventsUntil(plan, ids, signers, until),
    ...(until === reached.length - 1 ? ending(plan, ids, signers) : []),
  ];
}

function logCall(ask: BatchAsk, plan: PlannedCallout, office: Signers["office"]): string {
  const {
    liftId,
    said,
    group,
    caller,
    callBack,
    displayReading = "",
    landingId = null,
    inside = "nobody",
  } = plan;
  const insideCount = inside === "people inside" ? 1 : null;
  return ask(
    "callout.log",
    { liftId, liftWords: "", said, group, inside, insideCount, caller, callBack, displayReading, landingId },
    office,
  ).id;
}

function eventsUntil(plan: PlannedCallout, ids: PlayedIds, signers: Signers, until: number): Happening[] {
  const engineer = signers.engineer(plan.engineerId);
  const at = (minutes: number): number => plan.receivedAt + minutes * minute;
  const event = (kind: "arrived" | "people released" | "made safe") => (ask: BatchAsk) =>
    void ask("callout.recordEvent", { id: ids.calloutId, kind }, engineer);
  const happenings: Happening[] = [];
  if (until >= 1) {
    happenings.push({
      at: at(plan.passedAfter),
      happen: (ask) =>
        void ask(
          "callout.recordEvent",
          { id: ids.calloutId, kind: "passed on", to: plan.engineerId },
          signers.office,
        ),
    });
  }
  if (until >= 2) happenings.push({ at: at(plan.arrivedAfter), happen: event("arrived") });
  if (until >= 3 && plan.inside === "people inside")
    happenings.push({ at: at(plan.arrivedAfter + 12), happen: event("people released") });
  if (until >= 3) happenings.push({ at: at(plan.arrivedAfter + 16), happen: event("made safe") });
  return happenings;
}

function ending(plan: PlannedCallout, ids: PlayedIds, signers: Signers): Happening[] {
  const engineer = signers.engineer(plan.engineerId);
  const at = (minutes: number): number => plan.receivedAt + minutes * minute;
  const isLater = plan.ending === "left out of service";
  const happenings: Happening[] = [
    { at: at(plan.leftAfter), happen: (ask) => recordVisit(ask, plan, ids, signers) },
  ];
  if (!isLater) {
    happenings.push({
      at: at(plan.leftAfter + 1),
      happen: (ask) =>
        void ask(
          "callout.recordEvent",
          { id: ids.calloutId, kind: "back in service", registerComparedBy: plan.engineerId },
          engineer,
        ),
    });
  }
  happenings.push({ at: at(plan.leftAfter + 3), happen: (ask) => end(ask, plan, ids.calloutId, engineer) });
  if (isLater) happenings.push(returnVisit(plan, ids, signers));
  return happenings;
}

function iso(moment: number): string {
  return new Date(moment).toISOString();
}

function recordVisit(ask: BatchAsk, plan: PlannedCallout, ids: PlayedIds, signers: Signers): void {
  const isLater = plan.ending === "left out of service";
  const visit = ask(
    "visit.record",
    {
      liftId: plan.liftId,
      calloutId: ids.calloutId,
      kind: "callout",
      engineerId: plan.engineerId,
      arrivedAt: iso(plan.receivedAt + plan.arrivedAfter * minute),
      leftAt: iso(plan.receivedAt + plan.leftAfter * minute),
      found: plan.found,
      done: isLater ? "Made safe, isolated and locked off; part ordered." : plan.done,
      displayReading: plan.displayReading ?? "",
      chargeable: plan.chargeable,
      parts: isLater ? [] : [...(plan.parts ?? [])],
      fix: plan.fix && !isLater ? { cause: plan.fix.cause, fix: plan.fix.fix, group: plan.group } : null,
    },
    signers.engineer(plan.engineerId),
  );
  ids.visitId = visit.id;
  attach(ask, plan, visit.fixId, signers);
}

function attach(ask: BatchAsk, plan: PlannedCallout, fixId: string | null, signers: Signers): void {
  const noteId = plan.fix?.noteKey ? signers.noteId(plan.fix.noteKey) : null;
  if (!fixId || !noteId) return;
  ask(
    "fix.attach",
    { id: fixId, version: 1, noteId, causeKey: plan.fix?.causeKey ?? null },
    signers.engineer(plan.engineerId),
  );
}

function end(
  ask: BatchAsk,
  plan: PlannedCallout,
  calloutId: string,
  person: { id: string; name: string },
): void {
  const { version } = ask("callout.find", { id: calloutId }, null).callout;
  const isLater = plan.ending === "left out of service";
  ask(
    "callout.end",
    {
      id: calloutId,
      version,
      ending: plan.ending,
      group: plan.group,
      reason: isLater
        ? "Part ordered"
        : plan.ending === "cancelled"
          ? "Caller rang again: it runs"
          : plan.ending === "wrong address"
            ? "Another company’s lift"
            : "",
      awaits: isLater ? "part" : null,
      returnVisitOn: isLater ? iso(plan.receivedAt + 3 * 24 * 60 * minute).slice(0, 10) : null,
    },
    person,
  );
}

/** Three days later the part is there: a return visit, and the lift goes back in service. */
function returnVisit(plan: PlannedCallout, ids: { calloutId: string }, signers: Signers): Happening {
  const at = plan.receivedAt + 3 * 24 * 60 * minute;
  return {
    at,
    happen: (ask) => {
      const engineer = signers.engineer(plan.engineerId);
      const fix = plan.fix ? { cause: plan.fix.cause, fix: plan.fix.fix, group: plan.group } : null;
      const visit = ask(
        "visit.record",
        {
          liftId: plan.liftId,
          calloutId: ids.calloutId,
          kind: "return visit",
          engineerId: plan.engineerId,
          arrivedAt: iso(at - 40 * minute),
          leftAt: iso(at),
          found: plan.found,
          done: plan.done,
          chargeable: plan.chargeable,
          parts: [...(plan.parts ?? [])],
          fix,
        },
        engineer,
      );
      attach(ask, plan, visit.fixId, signers);
      const { lift, line } = ask("lift.find", { id: plan.liftId }, null);
      if (lift.state === "out of service" && line.openCallouts === 0) {
        ask(
          "lift.setState",
          { id: lift.id, version: lift.version, state: "in service", registerComparedBy: plan.engineerId },
          engineer,
        );
      }
    },
  };
}
