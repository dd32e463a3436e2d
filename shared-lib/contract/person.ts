import { z } from "zod";
import { roles, startScreens } from "../words.ts";
import { read, write } from "./operation.ts";
import {
  idSchema,
  lineSchema,
  noInputSchema,
  patchOf,
  recordFields,
  savedSchema,
  versionSchema,
} from "./record.ts";

export const personFieldsSchema = z.object({
  name: lineSchema,
  role: z.enum(roles),
  telephone: z.string().trim().max(60).default(""),
  onDuty: z.boolean().default(false),
  startScreen: z.enum(startScreens).default("desk"),
  /** Someone who left stays in the records and is no longer offered. */
  active: z.boolean().default(true),
});

export const personSchema = z.object({ ...recordFields, ...personFieldsSchema.shape });
export type Person = z.infer<typeof personSchema>;

export const personOperations = {
  "person.list": read(
    "Everybody, those on duty first.",
    noInputSchema,
    z.object({ people: z.array(personSchema) }),
  ),
  "person.add": write("Add a person.", personFieldsSchema, savedSchema),
  "person.change": write(
    "Change a person: name, telephone, start screen, still here or not.",
    z.object({ id: idSchema, version: versionSchema, fields: patchOf(personFieldsSchema) }),
    savedSchema,
  ),
  "person.handOverDuty": write(
    "One person goes off duty and another comes on, in one step.",
    z.object({ from: idSchema.nullable(), to: idSchema }),
    z.object({ people: z.array(savedSchema) }),
  ),
};
