import type { BrowserWindow, BrowserWindowConstructorOptions, Rectangle } from "electron";
import { startAddress } from "./app-address.ts";
import { readWindowState, smallestWindow, type WindowState, writeWindowState } from "./window-state.ts";

/**
 * Options of the one window: a sandboxed page without Node, in a world apart from the preload's.
 * @param preload absolute path of the bundled preload file
 */
export function windowOptions(
  preload: string,
  { maximized: _, ...bounds }: WindowState,
): BrowserWindowConstructorOptions {
  return {
    ...bounds,
    minWidth: smallestWindow.width,
    minHeight: smallestWindow.height,
    title: "Sillbook",
    show: false,
    webPreferences: {
      preload,
      sandbox: true,
      contextIsolation: true,
      nodeIntegration: false,
      nodeIntegrationInWorker: false,
      nodeIntegrationInSubFrames: false,
      webviewTag: false,
      webSecurity: true,
      allowRunningInsecureContent: false,
      navigateOnDragDrop: false,
      // Its dictionaries would be fetched from the network.
      spellcheck: false,
    },
  };
}

export interface ProgramWindowOptions {
  create(options: BrowserWindowConstructorOptions): BrowserWindow;
  readonly preload: string;
  /** Where the window's place is kept. */
  readonly stateFile: string;
  readonly workAreas: readonly Rectangle[];
}

/** Opens the program's window. Resolves when it is on the screen. */
export async function openProgramWindow({
  create,
  preload,
  stateFile,
  workAreas,
}: ProgramWindowOptions): Promise<BrowserWindow> {
  const state = readWindowState(stateFile, workAreas);
  const window = create(windowOptions(preload, state));
  window.on("close", () => writeWindowState(stateFile, window.getNormalBounds(), window.isMaximized()));
  const ready = new Promise<void>((done) => window.once("ready-to-show", () => done()));
  await window.loadURL(startAddress);
  await ready;
  if (state.maximized) window.maximize();
  window.show();
  return window;
}

/** Brings the window to the front, wherever it is. */
export function bringToFront(
  window: Pick<BrowserWindow, "isMinimized" | "restore" | "show" | "focus">,
): void {
  if (window.isMinimized()) window.restore();
  window.show();
  window.focus();
}
