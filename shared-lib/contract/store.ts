import { z } from "zod";
import { maintenance, read } from "./operation.ts";
import { momentSchema, noInputSchema } from "./record.ts";

export const backupSchema = z.object({
  name: z.string(),
  madeAt: momentSchema,
  kind: z.enum(["daily", "before-migration", "by-hand", "before-restore"]),
  bytes: z.number(),
});

export const storeOperations = {
  "backup.list": read(
    "Backups in the data folder, newest first.",
    noInputSchema,
    z.object({ backups: z.array(backupSchema) }),
  ),
  "backup.make": maintenance(
    "Make a backup now, checked after writing.",
    noInputSchema,
    z.object({ backup: backupSchema }),
  ),
  "backup.restore": maintenance(
    "Put a backup in the place of the present data. The present data is kept as a backup first.",
    z.object({ name: z.string().min(1).max(200) }),
    z.object({ restored: z.string(), keptAs: z.string() }),
  ),
  "store.copy": maintenance(
    "Write a consistent copy of the database for other SQLite tools; the live file is never to be opened by them.",
    noInputSchema,
    z.object({ file: z.string(), bytes: z.number() }),
  ),
  "demonstration.remove": maintenance(
    "Remove the demonstration company in one step. The data folder is empty afterwards; a backup is kept.",
    noInputSchema,
    z.object({ keptAs: z.string() }),
  ),
};
