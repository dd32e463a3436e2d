import { mkdirSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { KnownEvents } from "./events.mjs";
import { record } from "./record.mjs";
import { refuseTheRest } from "./refuse.mjs";

const events = new KnownEvents("app", [
  "web-contents-created",
  "second-instance",
  "window-all-closed",
  "will-quit",
]);
/** @type {Set<{ close(): void }>} */
export const openWindows = new Set();
/** @type {(() => Promise<void>)[]} */
const beforeExit = [];
/** The test gives each started program a folder of its own. */
let userData = process.env.SILLBOOK_HARNESS_FOLDER ?? "";

export const app = refuseTheRest("app", {
  isPackaged: false,
  commandLine: refuseTheRest("app.commandLine", {
    hasSwitch: (/** @type {string} */ name) => process.argv.includes(`--${name}`),
  }),
  on: events.on.bind(events),
  whenReady: () => Promise.resolve(),
  enableSandbox() {
    record.sandboxEnabled = true;
  },
  getPath(/** @type {string} */ name) {
    if (name === "userData") return userData;
    throw new Error(`The stand-in for Electron does not know the path ${name}`);
  },
  setPath(/** @type {string} */ name, /** @type {string} */ path) {
    if (name !== "userData")
      throw new Error(`The stand-in for Electron does not let the path ${name} be set`);
    userData = path;
  },
  requestSingleInstanceLock,
  quit,
  exit,
});

/** Tells the listeners of the program. @param {string} event @param {...unknown} args */
export function tellApp(event, ...args) {
  events.tell(event, ...args);
}

/** @param {() => Promise<void>} work */
export function doBeforeExit(work) {
  beforeExit.push(work);
}

function quit() {
  for (const window of [...openWindows]) window.close();
  if (!events.tellPreventable("will-quit")) exit(0);
}

/** @param {number} code */
function exit(code) {
  Promise.allSettled(beforeExit.map((work) => work())).then(() => {
    rmSync(join(userData, "instance"), { force: true });
    process.exit(code);
  });
}

/** One lock per userData folder, as in Electron; the first instance hears of the second by a signal. */
function requestSingleInstanceLock() {
  mkdirSync(userData, { recursive: true });
  const file = join(userData, "instance");
  process.on("SIGUSR2", () => events.tell("second-instance", {}, [], ""));
  try {
    writeFileSync(file, String(process.pid), { flag: "wx" });
    return true;
  } catch {
    const holder = Number(readFileSync(file, "utf8"));
    try {
      process.kill(holder, "SIGUSR2");
      return false;
    } catch {
      writeFileSync(file, String(process.pid));
      return true;
    }
  }
}
