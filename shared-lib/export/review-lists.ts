import type { InputOf, OutputOf } from "../contract/operations.ts";
import { moment, number, text, wholeList } from "./export-list.ts";

type Period = InputOf<"review.counts">;
type Chain = OutputOf<"review.repeats">["chains"][number];
type Counts = OutputOf<"review.counts">;

/** One row a callout of each chain; the number of the chain holds its callouts together. */
export const repeatList = wholeList<
  Period,
  { readonly chain: Chain; readonly place: number; readonly callout: Chain["callouts"][number] }
>(
  "Repeats",
  [
    number("Chain", ({ place }) => place),
    text("Lift", 30, ({ chain }) => chain.liftTitle),
    text("Fault group", 24, ({ chain }) => chain.group),
    text("Still goes on", 12, ({ chain }) => (chain.running ? "yes" : "no")),
    number("Callouts of the chain", ({ chain }) => chain.callouts.length),
    text("Number", 12, ({ callout }) => callout.number),
    moment("Received", ({ callout }) => callout.receivedAt),
    text("What was said", 44, ({ callout }) => callout.said),
    text("Cause", 36, ({ callout }) => callout.cause),
    text("Fix", 36, ({ callout }) => callout.fix),
  ],
  async (ask, period) =>
    (await ask("review.repeats", period)).chains.flatMap((chain, index) =>
      chain.callouts.map((callout) => ({ chain, place: index + 1, callout })),
    ),
);

export const liftCountList = wholeList<Period, Counts["lifts"][number]>(
  "Callouts per lift",
  [
    text("Lift", 30, (row) => row.liftTitle),
    number("Callouts", (row) => row.count),
    number("Year before", (row) => row.yearBefore),
  ],
  async (ask, period) => (await ask("review.counts", period)).lifts,
);

export const faultGroupCountList = wholeList<Period, Counts["groups"][number]>(
  "Callouts per fault group",
  [
    text("Fault group", 28, (row) => row.group),
    number("Callouts", (row) => row.count),
    number("Year before", (row) => row.yearBefore),
  ],
  async (ask, period) => (await ask("review.counts", period)).groups,
);

export const withoutCauseList = wholeList<Period, OutputOf<"review.withoutCause">["endings"][number]>(
  "Closed without a cause",
  [
    text("Ended as", 24, (row) => row.ending),
    number("Without a cause", (row) => row.calloutIds.length),
    number("Closed", (row) => row.closedIds.length),
  ],
  async (ask, period) => (await ask("review.withoutCause", period)).endings,
);

export const noteUseList = wholeList<Period, OutputOf<"review.notesUsed">["notes"][number]>(
  "Fault notes used",
  [
    text("Number", 12, (note) => note.number),
    text("Fault note", 50, (note) => note.title),
    text("Status", 12, (note) => note.status),
    number("Callouts", (note) => note.inPeriod),
  ],
  async (ask, period) => (await ask("review.notesUsed", period)).notes,
);
