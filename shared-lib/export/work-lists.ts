import type { Bridge, Danger } from "../contract/bridge.ts";
import type { CheckLine } from "../contract/check.ts";
import type { InputOf, OutputOf } from "../contract/operations.ts";
import type { ResultKind, SearchHit } from "../contract/search.ts";
import { moment, number, pagedList, text, wholeList } from "./export-list.ts";

type NoteLine = OutputOf<"faultNote.list">["notes"][number];

export const noteList = wholeList<InputOf<"faultNote.list">, NoteLine>(
  "Fault notes",
  [
    text("Number", 12, (note) => note.number),
    text("Fault note", 50, (note) => note.title),
    text("Fault group", 24, (note) => note.group),
    text("Status", 12, (note) => note.status),
    text("Starter note", 12, (note) => (note.starter ? "yes" : "no")),
    number("Callouts", (note) => note.callouts),
    number("Lifts", (note) => note.lifts),
  ],
  async (ask, input) => (await ask("faultNote.list", input)).notes,
);

const kindWords: Readonly<Record<ResultKind, string>> = {
  note: "fault note",
  calculator: "calculator",
  fix: "recorded fix",
  callout: "callout",
  lift: "lift",
  check: "signal check",
  visit: "visit",
};

/** The best two hundred of each kind: as many as can be unfolded on the screen. */
export const searchList = wholeList<Omit<InputOf<"search.find">, "limitPerKind">, SearchHit>(
  "Search results",
  [
    text("Kind", 14, (hit) => kindWords[hit.kind]),
    text("Number", 12, (hit) => hit.number),
    text("Title", 50, (hit) => hit.title),
    text("Passage", 60, (hit) => hit.second),
    text("Status", 14, (hit) => hit.status),
    moment("When", (hit) => hit.at),
    text("Why found", 40, (hit) => hit.why),
  ],
  async (ask, input) =>
    (await ask("search.find", { ...input, limitPerKind: 200 })).groups.flatMap(({ hits }) => hits),
);

const checksAtOnce = 500;

export const checkList = pagedList<Omit<InputOf<"check.list">, "offset" | "limit">, CheckLine>(
  "Signal checks",
  [
    text("Lift", 30, (check) => check.liftTitle),
    text("Check plan", 34, (check) => check.planName),
    moment("Started", (check) => check.startedAt),
    moment("Finished", (check) => check.finishedAt),
    text("By", 18, (check) => check.by.name),
    number("Passed", (check) => check.passed),
    number("Failed", (check) => check.failed),
    number("Unchecked", (check) => check.unchecked),
  ],
  async function* (ask, input) {
    for (let offset = 0; ; offset += checksAtOnce) {
      const { checks } = await ask("check.list", { ...input, offset, limit: checksAtOnce });
      yield { rows: checks, of: null };
      if (checks.length < checksAtOnce) return;
    }
  },
);

export const checkStepList = wholeList<InputOf<"check.find">, OutputOf<"check.find">["steps"][number]>(
  "Steps of a signal check",
  [
    text("Step", 40, (step) => step.title),
    text("Landing", 10, (step) => step.landingMarking),
    text("Verdict", 12, (step) => step.verdict),
    text("Result", 60, (step) => step.sentence),
    text("Note", 40, (step) => step.note),
    moment("When", (step) => step.at),
    text("By", 18, (step) => step.by?.name ?? ""),
    text("Source of the limit", 40, (step) => step.source),
  ],
  async (ask, input) => (await ask("check.find", input)).steps,
);

export const bridgeList = wholeList<InputOf<"bridge.list">, Bridge>(
  "Bridges",
  [
    text("Number", 12, (bridge) => bridge.number),
    text("Lift", 30, (bridge) => bridge.liftTitle),
    text("Open", 8, (bridge) => (bridge.open ? "yes" : "no")),
    text("Contact", 24, (bridge) => bridge.contact),
    text("Points", 24, (bridge) => bridge.points),
    text("Landing", 10, (bridge) => bridge.landingMarking),
    text("Why", 36, (bridge) => bridge.reason),
    text("Under control", 22, (bridge) => bridge.control),
    text("Lead", 10, (bridge) => bridge.leadNumber),
    moment("Set", (bridge) => bridge.setAt),
    text("Set by", 18, (bridge) => bridge.setBy.name),
    moment("Taken out", (bridge) => bridge.removedAt),
    text("Taken out by", 18, (bridge) => bridge.removedBy?.name ?? ""),
    text("Note on taking out", 36, (bridge) => bridge.removalNote),
    moment("Second check", (bridge) => bridge.checkedAt),
    text("Second check by", 18, (bridge) => bridge.checkedBy?.name ?? ""),
    text("Proof", 40, (bridge) => bridge.proof),
  ],
  async (ask, input) => (await ask("bridge.list", input)).bridges,
);

export const dangerList = wholeList<InputOf<"bridge.list">, Danger>(
  "Dangers",
  [
    text("Lift", 30, (danger) => danger.liftTitle),
    moment("Found", (danger) => danger.foundAt),
    text("Found by", 18, (danger) => danger.foundBy.name),
    text("What was found", 50, (danger) => danger.words),
    moment("Cleared", (danger) => danger.clearedAt),
    text("Cleared by", 18, (danger) => danger.clearedBy?.name ?? ""),
    text("How it was cleared", 50, (danger) => danger.clearedHow),
  ],
  async (ask, input) => (await ask("bridge.list", input)).dangers,
);
