import type { Envelope, OperationRequest } from "#shared-lib/contract/operation.ts";
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
