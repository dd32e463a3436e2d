import { z } from "zod";
import { awaited, endings, eventKinds, faultGroups, insideStates } from "../words.ts";
import { liftLineSchema } from "./lift.ts";
import { read, write } from "./operation.ts";
import {
  byWhomSchema,
  daySchema,
  idSchema,
  lineOrEmptySchema,
  lineSchema,
  momentSchema,
  patchOf,
  recordFields,
  savedSchema,
  versionSchema,
} from "./record.ts";

const saidSchema = z.string().trim().min(1).max(4000);

/** What the office writes down while the caller speaks. */
export const calloutFieldsSchema = z.object({
  /** Null while the lift is not on the books or not known yet: then `liftWords` says what the caller said. */
  liftId: idSchema.nullable(),
  liftWords: lineOrEmptySchema,
  landingId: idSchema.nullable().default(null),
  said: saidSchema,
  group: z.enum(faultGroups).default("not yet known"),
  inside: z.enum(insideStates),
  insideCount: z.int().min(1).max(100).nullable().default(null),
  insideCondition: z.string().trim().max(500).default(""),
  caller: lineOrEmptySchema,
  callBack: z.string().trim().max(60).default(""),
  /** What an engineer or caller reads on a display: free text, searched as an exact word. */
  displayReading: lineOrEmptySchema,
});

export const calloutEventSchema = z.object({
  id: idSchema,
  kind: z.enum(eventKinds),
  at: momentSchema,
  recordedAt: momentSchema,
  by: byWhomSchema,
  /** Whom it was passed to, for `passed on`. */
  to: byWhomSchema.nullable(),
  note: z.string(),
  registerComparedBy: byWhomSchema.nullable(),
  /** The event that this one corrects; lists show the newest of a chain. */
  corrects: idSchema.nullable(),
  /** Earlier times of this event, oldest first, each struck through in the timeline. */
  earlier: z.array(z.object({ at: momentSchema, by: byWhomSchema, recordedAt: momentSchema })),
});
export type CalloutEvent = z.infer<typeof calloutEventSchema>;

/** An event that was taken back: it stays visible, with who took it back and why. */
export const withdrawnEventSchema = z.object({
  id: idSchema,
  kind: z.enum(eventKinds),
  at: momentSchema,
  withdrawnAt: momentSchema,
  withdrawnBy: byWhomSchema,
  reason: z.string(),
});
export type WithdrawnEvent = z.infer<typeof withdrawnEventSchema>;

export const callerSchema = z.object({
  id: idSchema,
  at: momentSchema,
  caller: z.string(),
  callBack: z.string(),
  said: z.string(),
});

export const calloutSchema = z.object({
  ...recordFields,
  ...calloutFieldsSchema.shape,
  number: z.string(),
  receivedAt: momentSchema,
  insideSince: momentSchema.nullable(),
  /** Settled at closing: the group is no longer only proposed from the words. */
  groupSettled: z.boolean(),
  ending: z.enum(endings).nullable(),
  endingReason: z.string(),
  awaits: z.enum(awaited).nullable(),
  returnVisitOn: daySchema.nullable(),
  endedAt: momentSchema.nullable(),
  engineer: byWhomSchema.nullable(),
  /** True where the callout was brought in from records kept before Sillbook. */
  earlierRecord: z.boolean(),
});
export type Callout = z.infer<typeof calloutSchema>;

/** A callout as one line of a list. */
export const calloutLineSchema = z.object({
  id: idSchema,
  version: versionSchema,
  number: z.string(),
  liftId: idSchema.nullable(),
  liftTitle: z.string(),
  said: z.string(),
  group: z.enum(faultGroups),
  inside: z.enum(insideStates),
  insideCount: z.int().nullable(),
  /** When people inside were reported after the call, by a later caller; null: with the call. */
  insideSince: momentSchema.nullable(),
  /** People inside who are not recorded as released since they were reported. */
  stillInside: z.boolean(),
  callBack: z.string(),
  receivedAt: momentSchema,
  endedAt: momentSchema.nullable(),
  ending: z.enum(endings).nullable(),
  awaits: z.enum(awaited).nullable(),
  returnVisitOn: daySchema.nullable(),
  /** The newest event that happened. */
  state: z.enum(eventKinds),
  /** What is to be recorded next; null when closed. */
  next: z.enum(eventKinds).nullable(),
  /** Events made so far, in order. */
  made: z.array(z.enum(eventKinds)),
  engineer: byWhomSchema.nullable(),
  callerCount: z.int(),
  openBridges: z.array(z.object({ id: idSchema, number: z.string(), points: z.string() })),
  danger: z.boolean(),
  /** Which repeat of its fault group on its lift this is: 0 not a repeat, 1 the first repeat. */
  repeat: z.int(),
  cause: z.string(),
  fix: z.string(),
});
export type CalloutLine = z.infer<typeof calloutLineSchema>;

export const calloutFilterSchema = z.object({
  open: z.boolean().optional(),
  ids: z.array(idSchema).max(5000).optional(),
  liftId: idSchema.optional(),
  siteId: idSchema.optional(),
  group: z.enum(faultGroups).optional(),
  engineerId: idSchema.optional(),
  ending: z.enum(endings).optional(),
  receivedFrom: momentSchema.optional(),
  receivedBefore: momentSchema.optional(),
  withoutCause: z.boolean().optional(),
  text: z.string().max(300).optional(),
});

export const calloutOperations = {
  "callout.list": read(
    "Callouts as lines. Open ones: people first, then longest wait.",
    z.object({
      filter: calloutFilterSchema.default({}),
      order: z
        .enum(["people first", "newest first", "oldest first", "lift", "next event"])
        .default("people first"),
      offset: z.int().min(0).default(0),
      limit: z.int().min(1).max(2000).default(200),
    }),
    z.object({ callouts: z.array(calloutLineSchema), total: z.int() }),
  ),
  "callout.find": read(
    "One callout with events, callers, lift and what a repeat chain it stands in.",
    z.object({ id: idSchema }),
    z.object({
      callout: calloutSchema,
      line: calloutLineSchema,
      lift: liftLineSchema.nullable(),
      events: z.array(calloutEventSchema),
      withdrawn: z.array(withdrawnEventSchema),
      callers: z.array(callerSchema),
      chain: z.array(
        z.object({
          id: idSchema,
          number: z.string(),
          receivedAt: momentSchema,
          said: z.string(),
          endedHow: z.string(),
        }),
      ),
      visitIds: z.array(idSchema),
    }),
  ),
  "callout.beside": read(
    "What stands beside a callout while it is typed: last callouts of the lift, open ones it may belong to, same group within the repeat window, proposed group.",
    z.object({
      liftId: idSchema.nullable(),
      said: z.string().max(4000).default(""),
      group: z.enum(faultGroups).nullable().default(null),
    }),
    z.object({
      proposedGroup: z.enum(faultGroups),
      /** Words of the text that led to the proposal. */
      because: z.array(z.string()),
      lift: liftLineSchema.nullable(),
      open: z.array(calloutLineSchema),
      last: z.array(calloutLineSchema),
      /** Chain of callouts with the same group, each within the window of the one before, oldest first. */
      chain: z.array(calloutLineSchema),
    }),
  ),
  "callout.log": write(
    "Log a callout.",
    calloutFieldsSchema.extend({
      receivedAt: momentSchema.optional(),
      /** Pass it on at once to this person. */
      passTo: idSchema.nullable().default(null),
    }),
    savedSchema.extend({ number: z.string() }),
  ),
  "callout.join": write(
    "Add a second caller to an open callout instead of logging it twice.",
    z.object({
      id: idSchema,
      caller: lineOrEmptySchema,
      callBack: z.string().trim().max(60).default(""),
      said: saidSchema,
    }),
    savedSchema,
  ),
  "callout.change": write(
    "Correct what was written down, or settle which lift it is.",
    z.object({ id: idSchema, version: versionSchema, fields: patchOf(calloutFieldsSchema) }),
    savedSchema,
  ),
  "callout.recordEvent": write(
    "Record the next event of a callout. `back in service` needs the register compared with the shaft by a named person.",
    z.object({
      id: idSchema,
      kind: z.enum(eventKinds).exclude(["received", "closed"]),
      at: momentSchema.optional(),
      to: idSchema.nullable().default(null),
      note: z.string().trim().max(1000).default(""),
      registerComparedBy: idSchema.nullable().default(null),
    }),
    savedSchema.extend({ eventId: idSchema }),
  ),
  "callout.correctEvent": write(
    "Correct the time of an event: a new row naming the row it corrects.",
    z.object({ eventId: idSchema, at: momentSchema, note: z.string().trim().max(1000).default("") }),
    z.object({ eventId: idSchema }),
  ),
  "callout.withdrawEvent": write(
    "Take back an event that did not happen: a new row says so, the old one stays visible.",
    z.object({ eventId: idSchema, reason: lineSchema }),
    z.object({ eventId: idSchema }),
  ),
  "callout.end": write(
    "Close a callout with its ending. The fault group is settled here.",
    z.object({
      id: idSchema,
      version: versionSchema,
      ending: z.enum(endings),
      group: z.enum(faultGroups),
      reason: z.string().trim().max(1000).default(""),
      awaits: z.enum(awaited).nullable().default(null),
      returnVisitOn: daySchema.nullable().default(null),
      at: momentSchema.optional(),
    }),
    savedSchema,
  ),
  "callout.reopen": write(
    "Open a closed callout again, with the reason.",
    z.object({ id: idSchema, version: versionSchema, reason: lineSchema }),
    savedSchema,
  ),
  "callout.bringIn": write(
    "Bring in one callout from records kept before Sillbook. The state of the lift is not touched.",
    z.object({
      liftId: idSchema,
      said: saidSchema,
      group: z.enum(faultGroups),
      receivedAt: momentSchema,
      backInServiceAt: momentSchema.nullable(),
      cause: z.string().trim().max(4000).default(""),
      fix: z.string().trim().max(4000).default(""),
      inside: z.enum(insideStates).default("not recorded"),
      /** How it ended, where it went back in service. */
      ending: z.enum(endings).default("repaired"),
      /** It ended, but the old record does not say when: it is closed without an event that would say so. */
      endNotKnown: z.boolean().default(false),
    }),
    savedSchema.extend({ number: z.string() }),
  ),
};
