import { z } from "zod";
import { roles } from "../words.ts";
import { read, unsigned, write } from "./operation.ts";
import { idSchema, lineSchema, momentSchema, noInputSchema } from "./record.ts";

const jsonSchema: z.ZodType<unknown> = z.json();

export const deviceStateSchema = z.object({
  company: z.object({ id: idSchema, name: z.string() }).nullable(),
  personId: idSchema.nullable(),
  demonstration: z.boolean(),
  /** Short code that every running number given out here carries. */
  shortCode: z.string(),
  lastSavedAt: momentSchema.nullable(),
  /** Words of the newest error of the disk, until a later save succeeds. */
  notSaved: z.string().nullable(),
  dataFolder: z.string(),
  programVersion: z.string(),
  sqliteVersion: z.string(),
});

export const deviceOperations = {
  "device.state": read(
    "What this machine is: company, chosen person, demonstration or not.",
    noInputSchema,
    deviceStateSchema,
  ),
  "device.choosePerson": unsigned(
    "Remember on this machine who is writing.",
    z.object({ personId: idSchema }),
    z.object({ personId: idSchema }),
  ),
  "company.start": unsigned(
    "First start: the company's name and the first person.",
    z.object({
      companyName: lineSchema,
      personName: lineSchema,
      role: z.enum(roles),
      telephone: z.string().max(60).default(""),
    }),
    z.object({ companyId: idSchema, personId: idSchema }),
  ),
  "company.change": write(
    "Change the company's name.",
    z.object({ name: lineSchema }),
    z.object({ companyId: idSchema }),
  ),
  "draft.keep": unsigned(
    "Keep what a person is typing, so that it survives a closed window.",
    z.object({ key: z.string().min(1).max(200), value: jsonSchema }),
    z.object({ keptAt: momentSchema }),
  ),
  "draft.find": read(
    "What was kept under a key, or null.",
    z.object({ key: z.string().min(1).max(200) }),
    z.object({ draft: z.object({ value: jsonSchema, keptAt: momentSchema }).nullable() }),
  ),
  "draft.drop": unsigned(
    "Forget a draft after it was saved or given up.",
    z.object({ key: z.string().min(1).max(200) }),
    z.object({}),
  ),
  "setting.read": read(
    "A setting of this machine, or null.",
    z.object({ key: z.string().min(1).max(100) }),
    z.object({ value: jsonSchema }),
  ),
  "setting.write": unsigned(
    "Change a setting of this machine.",
    z.object({ key: z.string().min(1).max(100), value: jsonSchema }),
    z.object({}),
  ),
};
