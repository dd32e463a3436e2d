import { z } from "zod";
import { outcomeMeanings } from "./contract/fault-note.ts";
import { doorKinds, driveKinds, faultGroups } from "./words.ts";

/**
 * Where a check can hurt: nowhere beyond ordinary care, on live parts, in the shaft (car top, pit, machinery
 * space), or at parts that must first be isolated, locked off and proved dead.
 */
export const checkHazards = ["none", "live", "shaft", "isolated"] as const;

/** The standing every starter note declares, shown wherever one is shown. */
export const starterNoteBasis = "starter note: general practice, check on site";

const starterNoteCalculators = [
  "zone-sensors",
  "terminal-slowdown",
  "panel-bus",
  "floor-levels",
  "encoder-scale",
  "motor-drive",
  "counterweight-balance",
  "doors-energy",
  "governor-buffers",
  "unintended-movement",
  "rope-safety-factor",
  "traction",
  "rope-elongation",
  "safety-chain",
  "energy",
  "ride-comfort",
  "availability",
] as const;

/** Built-in check plans a starter note may lead to. */
export const starterNoteCheckPlans = [
  "zone-sensors",
  "terminal-slowdown",
  "inspection-controls",
  "door-commands",
  "chain-free-of-bridges",
] as const;

const key = z.string().regex(/^[a-z0-9]+(-[a-z0-9]+)*$/, "A key is written in lower case with hyphens.");
const words = z.string().trim().min(3).max(600);
const line = z.string().trim().min(3).max(120);

const cause = z.strictObject({
  key,
  title: line,
  tell: words.describe("How to tell this cause from the others, with eyes or a meter."),
  fix: words,
  caution: words.optional(),
  source: words.optional().describe("Clause with edition and how sure it is; absent means common practice."),
});

const outcome = z.strictObject({
  key,
  words: line,
  means: z
    .record(key, z.enum(outcomeMeanings))
    .describe("Meaning by cause key; a cause left out is neutral."),
});

const check = z
  .strictObject({
    key,
    title: line,
    how: words,
    minutes: z.number().int().min(1).max(240),
    caution: words.optional(),
    hazard: z.enum(checkHazards),
    outcomes: z.array(outcome).min(2).max(6),
  })
  .refine((value) => value.hazard === "none" || value.caution !== undefined, {
    message: "A check with a hazard carries its caution.",
    path: ["caution"],
  });

const calculatorLink = z.strictObject({
  id: z.enum(starterNoteCalculators),
  preset: z.record(z.string(), z.json()).describe("Inputs of the calculator to fill in, plain JSON."),
  why: words,
});

/**
 * One starter fault note, as it stands in a file of its own under main/data/starter-notes. Causes are in order of
 * likelihood; `minutes` is the usual time on site; keys are stable, because installed notes are updated by them.
 */
export const starterNoteSchema = z.strictObject({
  key,
  title: line.max(80),
  group: z.enum(faultGroups),
  symptoms: z.array(words).min(3),
  applies: z.strictObject({
    drives: z.array(z.enum(driveKinds)).describe("Empty: every drive."),
    doors: z.array(z.enum(doorKinds)).describe("Empty: every kind of door."),
    words: words.optional(),
  }),
  causes: z.array(cause).min(2).max(6),
  checks: z.array(check).min(1).max(4),
  cautions: z.array(words).min(1),
  calculators: z.array(calculatorLink),
  checkPlans: z.array(z.enum(starterNoteCheckPlans)),
  source: words,
  basis: z.literal(starterNoteBasis),
});

export type StarterNote = z.infer<typeof starterNoteSchema>;
