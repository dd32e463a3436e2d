import { setTimeout as pause } from "node:timers/promises";
import { SillbookError } from "#shared-lib/errors.ts";
import { type DataClient, openDataClient } from "../data/data-client.ts";
import { removeRunning, writeRunning } from "../data/data-folder.ts";
import { openAskDoor, type Shown } from "./ask-door.ts";
import { findRunningProgram } from "./running-program.ts";

/** An open data folder together with the listener by which other processes reach it. */
export interface HeldFolder {
  readonly data: DataClient;
  close(): Promise<void>;
}

export interface HoldOptions {
  readonly folder: string;
  readonly demonstration: boolean;
  show(): Promise<Shown>;
}

/** How long a program that holds the folder may take until it answers: it may itself be starting. */
const answerLimitMilliseconds = 5_000;

/**
 * Opens the data folder, or has the program that holds it shown.
 * @throws SillbookError of the data worker; `folder-in-use` only when the holder does not answer.
 */
export async function holdOrShow(options: HoldOptions): Promise<{ held: HeldFolder } | { shown: Shown }> {
  const giveUpAt = Date.now() + answerLimitMilliseconds;
  for (;;) {
    try {
      return { held: await holdFolder(options) };
    } catch (error) {
      if (!(error instanceof SillbookError) || error.code !== "folder-in-use") throw error;
      const running = await findRunningProgram(options.folder);
      if (running) return { shown: await running.show() };
      if (Date.now() > giveUpAt) throw error;
      await pause(200);
    }
  }
}

async function holdFolder({ folder, demonstration, show }: HoldOptions): Promise<HeldFolder> {
  const data = await openDataClient({ folder, demonstration });
  try {
    const door = await openAskDoor({ request: (request) => data.request(request), show });
    writeRunning(folder, { address: door.address, key: door.key, pid: process.pid });
    return {
      data,
      close: async () => {
        removeRunning(folder);
        await door.close();
        await data.close();
      },
    };
  } catch (error) {
    await data.close();
    throw error;
  }
}
