import { fileURLToPath } from "node:url";
import { app, BrowserWindow, dialog, ipcMain, Menu, protocol, screen, session, shell } from "electron";
import { readDoorOptions } from "../command-line/door-options.ts";
import { failureText } from "../command-line/failed-envelope.ts";
import { registerAppScheme, serveApp } from "./app-protocol.ts";
import { applyContentsRules } from "./contents-rules.ts";
import { programMenu } from "./program-menu.ts";
import { makeWindowFolder, printContents, runDesktop } from "./run-desktop.ts";
import { applySessionRules } from "./session-rules.ts";

const options = readDoorOptions(process.argv.slice(app.isPackaged ? 1 : 2));
const bundleFolder = fileURLToPath(new URL("../renderer", import.meta.url));
const preload = fileURLToPath(new URL("../preload/preload.cjs", import.meta.url));

registerAppScheme(protocol);
app.enableSandbox();
app.on("web-contents-created", (_event, contents) => applyContentsRules(contents));

const windowFolder = makeWindowFolder(app.getPath("userData"), options.folder);
app.setPath("userData", windowFolder);

if (app.commandLine.hasSwitch("no-sandbox")) {
  answered("Sillbook does not run with its sandbox switched off. Start it without --no-sandbox.", 1);
} else if (app.requestSingleInstanceLock()) {
  app.whenReady().then(start).catch(fail);
} else {
  answered("Sillbook is already running; its window was brought to the front.", 0);
}

async function start(): Promise<void> {
  applySessionRules(session.defaultSession);
  serveApp(protocol, bundleFolder);
  const running = await runDesktop(options, {
    app,
    ipcMain,
    screen,
    createWindow: (windowOptions) => new BrowserWindow(windowOptions),
    openExternal: (address) => shell.openExternal(address),
    windowFolder,
    preload,
  });
  if (!running) return answered(undefined, 0);
  const { window, held } = running;
  const print = (): void => void printContents(window.webContents);
  Menu.setApplicationMenu(Menu.buildFromTemplate(programMenu({ print, isPackaged: app.isPackaged })));
  closeInOrder(held.close);
  console.log(`Data folder: ${options.folder}`);
  console.log("sillbook: window-shown");
}

/** The program ends when its data is closed, not before. */
function closeInOrder(close: () => Promise<void>): void {
  let closing = false;
  app.on("window-all-closed", () => app.quit());
  app.on("will-quit", (event) => {
    event.preventDefault();
    if (closing) return;
    closing = true;
    close().then(() => app.exit(0), fail);
  });
  for (const signal of ["SIGINT", "SIGTERM", "SIGHUP"] as const) process.on(signal, () => app.quit());
}

function fail(error: unknown): void {
  answered(failureText(error), 1);
}

/** Ends for a reason that another shell would meet too: the start command must not try one. */
function answered(words: string | undefined, exitCode: number): void {
  if (words !== undefined) {
    (exitCode === 0 ? console.log : console.error)(words);
    if (app.isPackaged && exitCode !== 0) dialog.showErrorBox("Sillbook", words);
  }
  console.log("sillbook: answered");
  app.exit(exitCode);
}
