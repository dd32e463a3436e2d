import { z } from "zod";
import { read, write } from "./operation.ts";
import {
  idSchema,
  lineOrEmptySchema,
  lineSchema,
  noInputSchema,
  patchOf,
  recordFields,
  savedSchema,
  textSchema,
  versionSchema,
} from "./record.ts";

export const siteFieldsSchema = z.object({
  name: lineSchema,
  street: lineOrEmptySchema,
  town: lineOrEmptySchema,
  accessNotes: textSchema,
  keys: textSchema,
  hours: lineOrEmptySchema,
  machineryLocation: lineOrEmptySchema,
  contactName: lineOrEmptySchema,
  contactTelephone: z.string().trim().max(60).default(""),
});

export const siteSchema = z.object({ ...recordFields, ...siteFieldsSchema.shape });
export type Site = z.infer<typeof siteSchema>;

export const siteOperations = {
  "site.list": read(
    "Every site with the number of its lifts.",
    noInputSchema,
    z.object({ sites: z.array(siteSchema.extend({ liftCount: z.int() })) }),
  ),
  "site.find": read("One site.", z.object({ id: idSchema }), z.object({ site: siteSchema })),
  "site.add": write("Add a site.", siteFieldsSchema, savedSchema),
  "site.change": write(
    "Change a site.",
    z.object({ id: idSchema, version: versionSchema, fields: patchOf(siteFieldsSchema) }),
    savedSchema,
  ),
};
