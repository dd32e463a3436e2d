import { fileURLToPath } from "node:url";
import { readDoorOptions } from "../command-line/door-options.ts";
import { failureText } from "../command-line/failed-envelope.ts";
import { runLocalWeb } from "./run-local-web.ts";

const bundleFolder = fileURLToPath(new URL("../renderer", import.meta.url));

const starting = runLocalWeb({ ...readDoorOptions(process.argv.slice(2)), bundleFolder });
// Before anything is printed: who reads the address may stop the program at once.
stopOnSignal(async () => (await starting)?.close());
starting.catch(fail);

/** The first signal closes everything in order; a second Ctrl-C, from a person who will not wait, ends at once. */
function stopOnSignal(close: () => Promise<void>): void {
  let stopping = false;
  for (const signal of ["SIGINT", "SIGTERM", "SIGHUP"] as const) {
    process.on(signal, () => {
      if (stopping && signal === "SIGINT") process.exit(130);
      if (stopping) return;
      stopping = true;
      close().then(() => process.exit(0), fail);
    });
  }
}

function fail(error: unknown): void {
  console.error(failureText(error));
  process.exit(1);
}
