import { z } from "zod";
import { doorKinds, driveKinds, liftStates, ropings, signalRoles } from "../words.ts";
import { read, write } from "./operation.ts";
import {
  daySchema,
  idSchema,
  lineOrEmptySchema,
  lineSchema,
  momentSchema,
  noInputSchema,
  patchOf,
  recordFields,
  savedSchema,
  textSchema,
  versionSchema,
} from "./record.ts";
import { siteSchema } from "./site.ts";

const metres = (min: number, max: number) => z.number().min(min).max(max).nullable().default(null);

/** Everything recorded about one installation. Lengths in metres, loads in kg, speeds in m/s: SI inside. */
export const liftFieldsSchema = z.object({
  siteId: idSchema,
  name: lineSchema,
  plateNumber: lineOrEmptySchema,
  alarmLine: z.string().trim().max(60).default(""),
  driveKind: z.enum(driveKinds).nullable().default(null),
  ratedLoad: z.number().min(40).max(20_000).nullable().default(null),
  ratedSpeed: z.number().min(0.05).max(20).nullable().default(null),
  roping: z.enum(ropings).nullable().default(null),
  sheaveDiameter: metres(0.05, 3),
  encoderPulses: z.int().min(1).max(1_000_000).nullable().default(null),
  doorKind: z.enum(doorKinds).nullable().default(null),
  doorWidth: metres(0.3, 5),
  controllerFamily: lineOrEmptySchema,
  standardBuiltTo: lineOrEmptySchema,
  installedOn: daySchema.nullable().default(null),
  modernisedOn: daySchema.nullable().default(null),
  pitDepth: metres(0.1, 20),
  headroom: metres(0.5, 20),
  /** From the site's own drawing; there is no default. */
  magnetLength: metres(0.02, 2),
  sensorSpacing: metres(0, 2),
  /** Which zone signals enable unlocking. */
  unlockNeeds: z.enum(["either", "both"]).nullable().default(null),
  unlockingZone: z
    .union([z.literal(0.2), z.literal(0.35)])
    .nullable()
    .default(null),
  /** The site's own tolerance for the centre of a zone, plus or minus. */
  zoneTolerance: metres(0.0005, 0.1),
  /** Distance from the terminal landing at which the terminal slowdown switch acts. */
  upSlowdownDistance: metres(0.01, 40),
  downSlowdownDistance: metres(0.01, 40),
  /** Distance beyond the terminal landing at which the final limit switch acts. */
  upFinalDistance: metres(0, 2),
  downFinalDistance: metres(0, 2),
  busBitRate: z.number().min(1000).max(10_000_000).nullable().default(null),
  busLength: metres(0.1, 10_000),
  notes: textSchema,
});

export const liftSchema = z.object({
  ...recordFields,
  ...liftFieldsSchema.shape,
  state: z.enum(liftStates),
  stateReason: z.string(),
  stateSince: momentSchema.nullable(),
  stateBy: z.string().nullable(),
});
export type Lift = z.infer<typeof liftSchema>;

export const landingFieldsSchema = z.object({
  /** What is written on the landing and in the car: 0, G, 3, B1. */
  marking: z.string().trim().min(1).max(8),
  name: lineOrEmptySchema,
  /** Level above the reference landing, m. */
  level: z.number().min(-500).max(1000),
  entrances: z.enum(["front", "rear", "both"]).default("front"),
});
export const landingSchema = z.object({ ...recordFields, liftId: idSchema, ...landingFieldsSchema.shape });
export type Landing = z.infer<typeof landingSchema>;

export const signalFieldsSchema = z.object({
  name: lineSchema,
  role: z.enum(signalRoles),
  /** Terminal marking as on that site's own drawing: free text. */
  marking: z.string().trim().max(80).default(""),
  activeLevel: z.enum(["high", "low"]).default("high"),
  landingId: idSchema.nullable().default(null),
});
export const signalSchema = z.object({ ...recordFields, liftId: idSchema, ...signalFieldsSchema.shape });
export type Signal = z.infer<typeof signalSchema>;

/** A lift as one line: enough to recognise it and see its state wherever it is named. */
export const liftLineSchema = z.object({
  id: idSchema,
  siteId: idSchema,
  /** "Kittiwake House, Lift 2" */
  title: z.string(),
  siteName: z.string(),
  name: z.string(),
  street: z.string(),
  driveKind: z.enum(driveKinds).nullable(),
  doorKind: z.enum(doorKinds).nullable(),
  controllerFamily: z.string(),
  plateNumber: z.string(),
  landingCount: z.int(),
  state: z.enum(liftStates),
  stateReason: z.string(),
  stateSince: momentSchema.nullable(),
  openBridges: z.int(),
  openCallouts: z.int(),
  peopleInside: z.boolean(),
  danger: z.boolean(),
});
export type LiftLine = z.infer<typeof liftLineSchema>;

export const timelineEntrySchema = z.object({
  id: z.string(),
  at: momentSchema,
  kind: z.enum(["callout", "event", "visit", "check", "bridge", "danger", "change", "calculation", "state"]),
  /** Name of the mark to draw, as in look.md "Marks". */
  mark: z.string(),
  sentence: z.string(),
  second: z.string(),
  by: z.string(),
  /** Screen to open, as in /callout/<id>; null where there is none. */
  opens: z.string().nullable(),
});
export type TimelineEntry = z.infer<typeof timelineEntrySchema>;

export const liftOperations = {
  "lift.list": read("Every lift as one line.", noInputSchema, z.object({ lifts: z.array(liftLineSchema) })),
  "lift.lookUp": read(
    "Lifts by parts of site, street, lift name, plate number or a caller's number; typing errors forgiven.",
    z.object({ text: z.string().max(300), limit: z.int().min(1).max(50).default(8) }),
    z.object({ lifts: z.array(liftLineSchema.extend({ because: z.string() })) }),
  ),
  "lift.find": read(
    "One lift with site, landings and signals.",
    z.object({ id: idSchema }),
    z.object({
      lift: liftSchema,
      line: liftLineSchema,
      site: siteSchema,
      landings: z.array(landingSchema),
      signals: z.array(signalSchema),
    }),
  ),
  "lift.timeline": read(
    "What happened on a lift, newest first.",
    z.object({ id: idSchema, limit: z.int().min(1).max(1000).default(200), before: momentSchema.optional() }),
    z.object({ entries: z.array(timelineEntrySchema) }),
  ),
  "lift.add": write(
    "Add a lift with its landings.",
    liftFieldsSchema.extend({ landings: z.array(landingFieldsSchema).max(200).default([]) }),
    savedSchema,
  ),
  "lift.change": write(
    "Change what is recorded about a lift.",
    z.object({ id: idSchema, version: versionSchema, fields: patchOf(liftFieldsSchema) }),
    savedSchema,
  ),
  "lift.setState": write(
    "Put a lift in service, restricted or out of service, with the reason. In service again needs the register compared with the shaft.",
    z.object({
      id: idSchema,
      version: versionSchema,
      state: z.enum(liftStates),
      reason: z.string().trim().max(300).default(""),
      at: momentSchema.optional(),
      registerComparedBy: idSchema.nullable().default(null),
    }),
    savedSchema,
  ),
  "lift.setLandings": write(
    "Replace the landings of a lift; landings keep their id where one is given.",
    z.object({
      liftId: idSchema,
      version: versionSchema,
      /** The landings this was made from. Given, it is refused when they are others now: nothing is overwritten unseen. */
      seen: z.array(savedSchema).max(200).optional(),
      landings: z.array(landingFieldsSchema.extend({ id: idSchema.optional() })).max(200),
    }),
    savedSchema,
  ),
  "signal.add": write(
    "Add a signal to a lift.",
    signalFieldsSchema.extend({ liftId: idSchema }),
    savedSchema,
  ),
  "signal.change": write(
    "Change a signal.",
    z.object({ id: idSchema, version: versionSchema, fields: patchOf(signalFieldsSchema) }),
    savedSchema,
  ),
};
