import fs from "node:fs";
import path from "node:path";
import type { OperationName, OutputOf, ParsedInputOf } from "#shared-lib/contract/operations.ts";
import { SillbookError } from "#shared-lib/errors.ts";
import { copyDatabase, makeBackup, restoreBackup } from "./backups.ts";
import type { DataSession } from "./data-session.ts";

export type MaintenanceName = "backup.make" | "backup.restore" | "store.copy" | "demonstration.remove";

type Work<Name extends OperationName> = (
  session: DataSession,
  input: ParsedInputOf<Name>,
) => Promise<OutputOf<Name>>;

/** Work on the whole file. It runs alone: requests wait until it is done. */
export const maintenanceHandlers: { readonly [Name in MaintenanceName]: Work<Name> } = {
  async "backup.make"(session) {
    const { backup } = await makeBackup(session.folder, session.core.file, "by-hand", session.checking);
    return { backup };
  },

  async "backup.restore"(session, { name }) {
    session.closeCore();
    try {
      const { restored, keptAs } = await restoreBackup(session.folder, name, session.checking);
      return { restored, keptAs: keptAs ?? "" };
    } finally {
      await session.openCore({ demonstration: false });
      session.tellAnythingChanged();
    }
  },

  async "store.copy"(session) {
    const file = path.join(
      session.folder.folder,
      `sillbook-copy-${new Date().toISOString().replaceAll(":", "-").slice(0, 19)}Z.sqlite`,
    );
    return { file, bytes: await copyDatabase(session.core.file, file, session.checking) };
  },

  async "demonstration.remove"(session) {
    if (session.core.device.read<boolean>("demonstration") !== true) {
      throw new SillbookError(
        "state-refused",
        "This is a company's own data, not the demonstration. Nothing was removed.",
      );
    }
    const { backup } = await makeBackup(session.folder, session.core.file, "by-hand", session.checking);
    session.closeCore();
    fs.rmSync(session.folder.database);
    fs.rmSync(`${session.folder.database}-journal`, { force: true });
    await session.openCore({ demonstration: false, mayBeNew: true });
    session.tellAnythingChanged();
    return { keptAs: backup.name };
  },
};
