import { existsSync } from "node:fs";
import type { Envelope, OperationRequest } from "#shared-lib/contract/operation.ts";
import { operations } from "#shared-lib/contract/operations.ts";
import { SillbookError } from "#shared-lib/errors.ts";
import { openDataClient } from "../data/data-client.ts";
import { findRunningProgram } from "./running-program.ts";

export interface AskConnection {
  request(request: OperationRequest): Promise<Envelope>;
  close(): Promise<void>;
}

/**
 * Reaches a data folder: through the program that runs on it, else by opening it here.
 * @throws SillbookError `folder-in-use` when a program holds the folder and does not answer.
 */
export async function connectToFolder(folder: string): Promise<AskConnection> {
  const running = await throughRunningProgram(folder);
  if (running) return running;
  try {
    return await openDataClient({ folder });
  } catch (error) {
    if (!(error instanceof SillbookError) || error.code !== "folder-in-use") throw error;
    // It may have been started between the two looks.
    const startedMeanwhile = await throughRunningProgram(folder);
    if (startedMeanwhile) return startedMeanwhile;
    throw error;
  }
}

async function throughRunningProgram(folder: string): Promise<AskConnection | undefined> {
  const running = await findRunningProgram(folder);
  return running && { request: (request) => running.request(request), close: async () => {} };
}

/**
 * A data folder that is not there is only made by an operation that can begin one: a mistyped name of a folder must not
 * leave an empty one behind.
 * @throws SillbookError `not-found`
 */
export function requireFolderFor(operation: string, folder: string): void {
  const kind = Object.hasOwn(operations, operation)
    ? operations[operation as keyof typeof operations].kind
    : "read";
  if ((kind !== "read" && kind !== "write") || existsSync(folder)) return;
  throw new SillbookError("not-found", `There is no data folder ${folder}. company.start begins a new one.`, {
    path: folder,
  });
}
