// What writer.mjs needs, in one file: Node 20 runs no TypeScript, so the test bundles this module first.
import { openSqliteOnDisk } from "../../main/data/sqlite-disk/open-sqlite-on-disk.ts";
import { prepareContent, saveNext } from "./content.ts";

export { openSqliteOnDisk, prepareContent, saveNext };
