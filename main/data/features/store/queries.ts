import { listBackups } from "../../backups.ts";
import type { Handlers } from "../../context.ts";
import { dataFolderPaths } from "../../data-folder.ts";

export const storeQueries: Handlers<"backup.list"> = {
  "backup.list"(context) {
    return { backups: listBackups(dataFolderPaths(context.program.dataFolder)) };
  },
};
