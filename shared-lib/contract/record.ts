import { z } from "zod";

/** UUIDv7: sortable by the time it was made. */
export const idSchema = z.uuid();

/** A moment, UTC, ISO 8601 with a final Z. */
export const momentSchema = z.iso.datetime();

/** A day without time, as in 2026-11-24. */
export const daySchema = z.iso.date();

/** Free words on one line, not empty. */
export const lineSchema = z.string().trim().min(1).max(300);

/** Free words on one line, may be empty. */
export const lineOrEmptySchema = z.string().trim().max(300).default("");

/** Free words, many lines, may be empty. */
export const textSchema = z.string().max(20_000).default("");

/** Version of a record: the count of its changes, from 1. A write carries the version it was made from. */
export const versionSchema = z.int().min(1);

/** What every stored record carries. */
export const recordFields = {
  id: idSchema,
  version: versionSchema,
  createdAt: momentSchema,
};

export const savedSchema = z.object({ id: idSchema, version: versionSchema });

/** A person as shown beside what they did. */
export const byWhomSchema = z.object({ id: idSchema, name: z.string() });

export const noInputSchema = z.object({}).default({});

/**
 * The fields of a change: those that are given, none that are not. Zod's own `partial` would fill a field that was left
 * out with its default and so overwrite what is stored.
 */
export function patchOf<Schema extends z.ZodObject>(
  schema: Schema,
): z.ZodType<Partial<z.output<Schema>>, Partial<z.input<Schema>>> {
  const fields = Object.entries(schema.shape).map(([name, field]) => {
    const plain = field instanceof z.ZodDefault ? (field.unwrap() as z.ZodType) : (field as z.ZodType);
    return [name, plain.optional()];
  });
  return z.object(Object.fromEntries(fields)) as unknown as z.ZodType<
    Partial<z.output<Schema>>,
    Partial<z.input<Schema>>
  >;
}
