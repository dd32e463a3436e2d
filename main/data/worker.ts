import { parentPort, workerData } from "node:worker_threads";
import type { ProgramEvent } from "#shared-lib/contract/operation.ts";
import { failure } from "./data-core.ts";
import { DataSession } from "./data-session.ts";
import { checkerInThread } from "./file-check/check-in-thread.ts";
import type { FromWorker, ToWorker, WorkerStart } from "./worker-messages.ts";

// The database lives here alone, so that no screen ever waits for the disk. Requests are answered one after another.
const port = parentPort;
if (!port) throw new Error("the data worker runs only as a worker thread");

function say(message: FromWorker): void {
  port?.postMessage(message);
}

function serve(session: DataSession): void {
  const open = new Set<Promise<void>>();
  port?.on("message", (message: ToWorker) => {
    if (message.kind === "close") {
      void close(session, [...open]);
      return;
    }
    const answered = session
      .request(message.request)
      .then((envelope) => say({ kind: "answer", call: message.call, envelope }))
      .finally(() => open.delete(answered));
    open.add(answered);
  });
  say({ kind: "ready" });
}

/** What was asked is answered first. */
async function close(session: DataSession, open: readonly Promise<void>[]): Promise<void> {
  await Promise.all(open);
  await session.close();
  say({ kind: "closed" });
  port?.close();
}

try {
  const start = workerData as WorkerStart;
  const emit = (event: ProgramEvent): void => say({ kind: "event", event });
  serve(await DataSession.open({ ...start, emit, check: checkerInThread(start.checkerPath) }));
} catch (error) {
  say({ kind: "failed", failure: failure(error, (thrown) => console.error(thrown)) });
  port.close();
}
