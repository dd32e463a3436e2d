import { fileURLToPath } from "node:url";
import { readDoorOptions } from "../command-line/door-options.ts";
import { failureText } from "../command-line/failed-envelope.ts";
import { runLocalWeb } from "./run-local-web.ts";

const bundleFolder = fileURLToPath(new URL("../renderer", import.meta.url));

try {
  const running = await runLocalWeb({ ...readDoorOptions(process.argv.slice(2)), bundleFolder });
  if (running) stopOnSignal(running.close);
} catch (error) {
  console.error(failureText(error));
  process.exitCode = 1;
}

/** The first signal closes everything in order; a second one, from a person who will not wait, ends at once. */
function stopOnSignal(close: () => Promise<void>): void {
  let stopping = false;
  for (const signal of ["SIGINT", "SIGTERM", "SIGHUP"] as const) {
    process.on(signal, () => {
      if (stopping) process.exit(130);
      stopping = true;
      close().then(
        () => process.exit(0),
        (error: unknown) => {
          console.error(failureText(error));
          process.exit(1);
        },
      );
    });
  }
}
