// A process that saves without pause until it is killed, and tells each commit once it is acknowledged.
// Usage: node writer.mjs <bundled module> <database file>
import fs from "node:fs";
import { pathToFileURL } from "node:url";

const [bundle = "", file = ""] = process.argv.slice(2);
const { openSqliteOnDisk, prepareContent, saveNext } = await import(pathToFileURL(bundle).href);
const store = await openSqliteOnDisk(file);
prepareContent(store);
fs.writeSync(1, "ready\n");
for (;;) {
  const number = saveNext(store);
  fs.writeSync(1, `${number}\n`);
}
