import { z } from "zod";
import { dateForms } from "../import/date-form.ts";
import { importFieldNames } from "../import/import-columns.ts";
import { faultGroups } from "../words.ts";
import { read, write } from "./operation.ts";
import { idSchema, momentSchema, noInputSchema } from "./record.ts";

const cell = (most: number) => z.string().max(most);

/** How the columns of a table are to be read. Kept with each import, and proposed for a table with the same columns. */
export const importMappingSchema = z.object({
  kind: z.enum(["callouts", "lifts"]).default("callouts"),
  /** Field to the words at the head of its column. */
  columns: z.partialRecord(z.enum(importFieldNames as [string, ...string[]]), z.string().max(300)),
  dateForm: z.enum(dateForms).default("year first"),
  /** The table's words for a fault group to ours; others are "not yet known". */
  groups: z.record(z.string().max(300), z.enum(faultGroups)).default({}),
  /** "Site / Lift" as the table writes it, to the id of the lift that is meant, or "new". */
  lifts: z.record(z.string().max(700), z.union([idSchema, z.literal("new")])).default({}),
  /** Lifts that are not on the books, and are like none that is, are added. */
  addLifts: z.boolean().default(false),
});
export type ImportMapping = z.infer<typeof importMappingSchema>;

/** One row, read. `receivedAt` is null for a table of lifts. */
export const importRowSchema = z.object({
  /** Line of the file, from 1, as a person counts it. */
  rowNumber: z.int().min(1),
  site: cell(300),
  street: cell(300),
  town: cell(300),
  lift: cell(300),
  plateNumber: cell(300),
  said: cell(4000),
  receivedAt: momentSchema.nullable(),
  backInServiceAt: momentSchema.nullable(),
  group: z.enum(faultGroups),
  cause: cell(4000),
  fix: cell(4000),
});
export type ImportRow = z.infer<typeof importRowSchema>;

export const refusedRowSchema = z.object({
  rowNumber: z.int().min(1),
  reason: z.string().max(1000),
  cells: z.array(z.string().max(20_000)).max(500),
});
export type RefusedRow = z.infer<typeof refusedRowSchema>;

const countsSchema = z.object({
  added: z.int(),
  duplicates: z.int(),
  refused: z.array(z.object({ rowNumber: z.int(), reason: z.string() })),
  newSites: z.int(),
  newLifts: z.int(),
});
export type ImportCounts = z.infer<typeof countsSchema>;

const rowsSchema = z.array(importRowSchema).max(1000);
const settling = importMappingSchema.pick({ kind: true, lifts: true, addLifts: true });

export const importOperations = {
  "import.matchLifts": read(
    "For lifts as an old table names them: the lift on the books, or those it could be.",
    z.object({
      lifts: z.array(importRowSchema.pick({ site: true, lift: true, plateNumber: true })).max(1000),
    }),
    z.object({
      lifts: z.array(
        z.object({
          /** "Site / Lift", the key of a decision in the mapping. */
          words: z.string(),
          liftId: idSchema.nullable(),
          couldBe: z.array(z.object({ id: idSchema, title: z.string() })),
        }),
      ),
    }),
  ),
  "import.preview": read(
    "What bringing in these rows would do. Nothing is written.",
    settling.extend({ rows: rowsSchema }),
    countsSchema,
  ),
  "import.begin": write(
    "Begin to bring in a table of old records; its rows follow in parts.",
    z.object({
      name: z.string().trim().min(1).max(300),
      /** Words at the heads of the columns, in order. */
      header: z.array(z.string().max(300)).max(500),
      mapping: importMappingSchema,
    }),
    z.object({ importId: idSchema }),
  ),
  "import.bringIn": write(
    "Bring in rows of an import that was begun. A row that is on the books already is passed over.",
    settling.extend({
      importId: idSchema,
      rows: rowsSchema,
      /** The cells of these rows as the table has them, so that a refused one can be corrected and brought again. */
      cells: z.array(refusedRowSchema.shape.cells).max(1000).default([]),
      /** Rows that could not be read. They are kept with their reason. */
      refused: z.array(refusedRowSchema).max(1000).default([]),
    }),
    countsSchema,
  ),
  "import.undo": write(
    "Take back an import, a part at a time: what was brought in and not touched since is deleted. Ask again until nothing is left.",
    z.object({ importId: idSchema, atOnce: z.int().min(1).max(5000).default(1000) }),
    z.object({ deleted: z.int(), left: z.int(), kept: z.int() }),
  ),
  "import.list": read(
    "Imports, newest first.",
    noInputSchema,
    z.object({
      imports: z.array(
        z.object({
          importId: idSchema,
          name: z.string(),
          at: momentSchema,
          personName: z.string(),
          added: z.int(),
          refused: z.int(),
          undone: z.boolean(),
        }),
      ),
    }),
  ),
  "import.refused": read(
    "Rows of an import that were refused, with their reasons, in the order of the table.",
    z.object({
      importId: idSchema,
      after: z.int().min(0).default(0),
      limit: z.int().min(1).max(5000).default(1000),
    }),
    z.object({ header: z.array(z.string()), rows: z.array(refusedRowSchema) }),
  ),
  "import.remembered": read(
    "The mapping last used for a table with these columns.",
    z.object({ header: z.array(z.string().max(300)).max(500) }),
    z.object({ mapping: importMappingSchema.nullable() }),
  ),
};
