import { createHash } from "node:crypto";
import { mkdirSync } from "node:fs";
import { join } from "node:path";
import type {
  App,
  BrowserWindow,
  BrowserWindowConstructorOptions,
  IpcMain,
  Screen,
  WebContents,
} from "electron";
import type { Shown } from "../command-line/ask-door.ts";
import type { DoorOptions } from "../command-line/door-options.ts";
import { type HeldFolder, holdOrShow } from "../command-line/held-folder.ts";
import { answerCall } from "./answer-call.ts";
import { eventChannel, requestChannel } from "./channels.ts";
import { bringToFront, openProgramWindow } from "./program-window.ts";
import { handleTrusted } from "./trusted-sender.ts";

/** The parts of Electron the running program needs; main.ts has already set the rules of section "hardening". */
export interface DesktopParts {
  readonly app: App;
  readonly ipcMain: IpcMain;
  readonly screen: Screen;
  createWindow(options: BrowserWindowConstructorOptions): BrowserWindow;
  openExternal(address: string): Promise<void>;
  /** Where this data folder's window keeps its place and its caches. */
  readonly windowFolder: string;
  readonly preload: string;
}

/** A folder of its own for each data folder's window: Electron's single-instance lock then counts per data folder. */
export function makeWindowFolder(usualFolder: string, dataFolder: string): string {
  const name = createHash("sha256").update(dataFolder).digest("hex").slice(0, 16);
  const folder = join(usualFolder, `window-${name}`);
  mkdirSync(folder, { recursive: true });
  return folder;
}

/**
 * Opens the data folder and its window.
 * @returns undefined when the program that holds the folder was shown instead.
 */
export async function runDesktop(
  { folder, demonstration, open }: DoorOptions,
  parts: DesktopParts,
): Promise<{ window: BrowserWindow; held: HeldFolder } | undefined> {
  let window: BrowserWindow | undefined;
  const show = async (): Promise<Shown> => {
    if (window) bringToFront(window);
    return { in: "window" };
  };
  const opened = await holdOrShow({ folder, demonstration, show });
  if ("shown" in opened) {
    await tellShown(opened.shown, open, parts);
    return undefined;
  }
  const { held } = opened;
  try {
    receiveCalls(held, parts);
    parts.app.on("second-instance", () => void show());
    window = await openProgramWindow({
      create: parts.createWindow,
      preload: parts.preload,
      stateFile: join(parts.windowFolder, "window-state.json"),
      workAreas: parts.screen.getAllDisplays().map((display) => display.workArea),
    });
    sendEvents(held, window);
    return { window, held };
  } catch (error) {
    await held.close();
    throw error;
  }
}

function receiveCalls({ data }: HeldFolder, { ipcMain, openExternal }: DesktopParts): void {
  handleTrusted(ipcMain, requestChannel, (message, sender) =>
    answerCall(message, { data, openExternal, print: () => printContents(sender) }),
  );
}

function sendEvents({ data }: HeldFolder, window: BrowserWindow): void {
  const endSubscription = data.onEvent((event) => {
    if (!window.isDestroyed()) window.webContents.send(eventChannel, event);
  });
  window.on("closed", endSubscription);
}

/** Resolves when the print dialog is done; a person who cancels it has made no error. */
export function printContents(contents: Pick<WebContents, "print">): Promise<void> {
  return new Promise((done) => contents.print({ printBackground: true }, () => done()));
}

async function tellShown(shown: Shown, open: boolean, { openExternal }: DesktopParts): Promise<void> {
  if (shown.in === "window") {
    console.log("Sillbook is already running; its window was brought to the front.");
    return;
  }
  console.log(`Sillbook is already running: ${shown.address}`);
  if (open) await openExternal(shown.address);
}
