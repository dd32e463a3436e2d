import { parentPort, workerData } from "node:worker_threads";
import { failure } from "../data-core.ts";
import { checkFile } from "./check-file.ts";
import type { FileChecked } from "./check-in-thread.ts";

if (!parentPort) throw new Error("the file check runs only as a worker thread");

let answer: FileChecked;
try {
  answer = { check: await checkFile(String(workerData)) };
} catch (error) {
  answer = { failure: failure(error, (thrown) => console.error(thrown)) };
}
parentPort.postMessage(answer);
