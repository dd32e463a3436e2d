import { parentPort, workerData } from "node:worker_threads";
import { failure } from "./data-core.ts";
import { DataSession } from "./data-session.ts";
import type { FromWorker, ToWorker, WorkerStart } from "./worker-messages.ts";

// The database lives here alone, so that no screen ever waits for the disk. Requests are answered one after another.
const port = parentPort;
if (!port) throw new Error("the data worker runs only as a worker thread");

function say(message: FromWorker): void {
  port?.postMessage(message);
}

async function serve(session: DataSession): Promise<void> {
  let last: Promise<void> = Promise.resolve();
  port?.on("message", (message: ToWorker) => {
    last = last.then(async () => {
      if (message.kind === "request") {
        say({ kind: "answer", call: message.call, envelope: await session.request(message.request) });
        return;
      }
      session.close();
      say({ kind: "closed" });
      port?.close();
    });
  });
  say({ kind: "ready" });
}

try {
  const start = workerData as WorkerStart;
  await serve(await DataSession.open({ ...start, emit: (event) => say({ kind: "event", event }) }));
} catch (error) {
  say({ kind: "failed", failure: failure(error, (thrown) => console.error(thrown)) });
  port.close();
}
