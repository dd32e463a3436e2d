import { mkdtempSync, readFileSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { chromium } from "playwright";
import { chromiumArguments, chromiumPath } from "../chromium-launch.mjs";
import { collectComplaints } from "../collect-complaints.mjs";
import { doBeforeExit, openWindows, tellApp } from "./app.mjs";
import { KnownEvents } from "./events.mjs";
import { receive } from "./ipc-main.mjs";
import { refuseOtherThanJson } from "./plain-json.mjs";
import { deliverFunction, invokeBinding, preloadScript } from "./preload-script.mjs";
import { answerFromApp, toAppAddress, toHarnessAddress } from "./protocol.mjs";
import { record } from "./record.mjs";
import { refuseTheRest, refuseUnknown } from "./refuse.mjs";
import { isCancelled } from "./session.mjs";

const knownOptions = [
  "x",
  "y",
  "width",
  "height",
  "minWidth",
  "minHeight",
  "title",
  "show",
  "webPreferences",
];
const contentsEvents = ["will-navigate", "will-redirect", "will-frame-navigate", "will-attach-webview"];

/**
 * The browsers behind the windows, for the test to connect to.
 * @type {{ endpoint: Promise<string>, complaints: Promise<import("../collect-complaints.mjs").Complaints> }[]}
 */
export const browsers = [];

/** A BrowserWindow whose page is a page of a real Chromium. */
class StandInWindow {
  #events = new KnownEvents("BrowserWindow", ["ready-to-show", "close", "closed"]);
  #contentsEvents = new KnownEvents("webContents", contentsEvents);
  #options;
  #profile = mkdtempSync(join(tmpdir(), "sillbook-harness-"));
  #opened;
  #loading = "";
  #destroyed = false;
  #maximized = false;
  /** @type {(details: { url: string }) => { action: string }} */
  #windowOpenHandler = () => ({ action: "allow" });
  webContents;

  /** @param {{ width: number, height: number, x?: number, y?: number, webPreferences: { preload: string } }} options */
  constructor(options) {
    refuseUnknown("the window option", knownOptions, Object.keys(options));
    record.windowOptions.push(options);
    this.#options = options;
    this.webContents = this.#makeContents();
    tellApp("web-contents-created", {}, this.webContents);
    openWindows.add(this);
    this.#opened = this.#open();
    browsers.push({
      endpoint: this.#opened.then(({ endpoint }) => endpoint),
      complaints: this.#opened.then(({ complaints }) => complaints),
    });
  }

  #makeContents() {
    return refuseTheRest("webContents", {
      on: this.#contentsEvents.on.bind(this.#contentsEvents),
      setWindowOpenHandler: (/** @type {(details: { url: string }) => { action: string }} */ handler) => {
        this.#windowOpenHandler = handler;
      },
      send: (/** @type {string} */ channel, /** @type {unknown} */ value) => {
        refuseOtherThanJson(value);
        void this.#deliver(channel, JSON.stringify(value));
      },
      print: (
        /** @type {object} */ options,
        /** @type {(success: boolean, reason: string) => void} */ done,
      ) => {
        record.printed.push(options);
        done(true, "");
      },
    });
  }

  async #open() {
    const context = await chromium.launchPersistentContext(this.#profile, {
      executablePath: chromiumPath(),
      args: [...chromiumArguments(), "--remote-debugging-port=0"],
      viewport: { width: this.#options.width, height: this.#options.height },
      handleSIGINT: false,
      handleSIGTERM: false,
      handleSIGHUP: false,
    });
    doBeforeExit(async () => {
      await context.close();
      rmSync(this.#profile, { recursive: true, force: true });
    });
    const complaints = await collectComplaints(context);
    const page = context.pages()[0] ?? (await context.newPage());
    await context.exposeBinding(invokeBinding, ({ frame }, channel, json) =>
      this.#receive(frame, channel, json),
    );
    await context.addInitScript({ content: preloadScript(this.#options.webPreferences.preload) });
    await context.route("**/*", (route, request) => this.#answer(page, route, request));
    // Whoever drives the page answers its dialogs; without a listener here they would be dismissed at once.
    page.on("dialog", () => {});
    page.on("popup", (popup) => {
      // An address was asked about when it was requested; an empty window requests none.
      if (popup.url() === "about:blank") this.#refuseWindow(popup.url());
      void popup.close();
    });
    page.on("close", () => this.#closed());
    return { page, complaints, endpoint: readEndpoint(this.#profile) };
  }

  /** @param {import("playwright").Frame} frame @param {string} channel @param {string} json */
  #receive(frame, channel, json) {
    const url = toAppAddress(frame.url());
    const origin = url.startsWith("app://bundle/") ? "app://bundle" : new URL(url).origin;
    const parent = frame.parentFrame() ? {} : null;
    return receive(channel, json, { senderFrame: { url, origin, parent }, sender: this.webContents });
  }

  /**
   * @param {import("playwright").Page} page
   * @param {import("playwright").Route} route
   * @param {import("playwright").Request} request
   */
  async #answer(page, route, request) {
    const address = toAppAddress(request.url());
    if (request.isNavigationRequest() && !this.#mayNavigate(page, request, address)) {
      record.refusedNavigations.push(address);
      await route.abort("aborted");
    } else if (isCancelled(address)) {
      record.cancelledRequests.push(address);
      await route.abort("blockedbyclient");
    } else if (address.startsWith("app://")) {
      await answerFromApp(route, request);
    } else {
      // Electron would go to the network here; a test never does.
      await route.abort("addressunreachable");
    }
  }

  /** @param {import("playwright").Page} page @param {import("playwright").Request} request @param {string} address */
  #mayNavigate(page, request, address) {
    if (address === this.#loading) {
      this.#loading = "";
      return true;
    }
    const frame = frameOf(request);
    if (frame?.page() !== page) {
      this.#refuseWindow(address);
      return false;
    }
    const isMainFrame = frame === page.mainFrame();
    const details = { url: address, isMainFrame };
    const framePrevented = this.#contentsEvents.tellPreventable("will-frame-navigate", details);
    return (
      !framePrevented && !(isMainFrame && this.#contentsEvents.tellPreventable("will-navigate", details))
    );
  }

  /**
   * Asks the program about a window that a page opens. It is there for a moment, as Chromium asks nobody before.
   * @param {string} url
   */
  #refuseWindow(url) {
    const { action } = this.#windowOpenHandler({ url });
    if (action !== "deny") throw new Error("The stand-in for Electron opens no second window");
    record.refusedWindows.push(url);
  }

  /** @param {string} channel @param {string} json */
  async #deliver(channel, json) {
    const { page } = await this.#opened;
    if (page.isClosed()) return;
    const deliver = `window[${JSON.stringify(deliverFunction)}]?.(${JSON.stringify(channel)}, ${JSON.stringify(json)})`;
    // A page that is just being left hears nothing, as in Electron.
    await page.evaluate(deliver).catch(() => {});
  }

  /** @param {string} address */
  async loadURL(address) {
    const { page } = await this.#opened;
    this.#loading = address;
    await page.goto(toHarnessAddress(address), { waitUntil: "load" });
    this.#events.tell("ready-to-show");
  }

  /** @param {string} event @param {(...args: any[]) => void} listener */
  on(event, listener) {
    this.#events.on(event, listener);
  }

  /** @param {string} event @param {(...args: any[]) => void} listener */
  once(event, listener) {
    this.#events.once(event, listener);
  }

  close() {
    if (this.#destroyed) return;
    void this.#opened.then(({ page }) => page.close());
    this.#closed();
  }

  #closed() {
    if (this.#destroyed) return;
    this.#events.tell("close", {});
    this.#destroyed = true;
    openWindows.delete(this);
    this.#events.tell("closed");
    if (openWindows.size === 0) tellApp("window-all-closed");
  }

  isDestroyed() {
    return this.#destroyed;
  }

  getNormalBounds() {
    const { x = 0, y = 0, width, height } = this.#options;
    return { x, y, width, height };
  }

  isMaximized() {
    return this.#maximized;
  }

  maximize() {
    this.#maximized = true;
  }

  isMinimized() {
    return false;
  }

  show() {
    record.shownCount += 1;
  }

  focus() {
    record.focusedCount += 1;
  }
}

/**
 * The frame of a navigation, undefined where the frame is only just being made.
 * @param {import("playwright").Request} request
 */
function frameOf(request) {
  try {
    return request.frame();
  } catch {
    return undefined;
  }
}

/** @param {string} profile */
function readEndpoint(profile) {
  const [port] = readFileSync(join(profile, "DevToolsActivePort"), "utf8").split("\n");
  return `http://127.0.0.1:${port}`;
}

export const BrowserWindow = new Proxy(StandInWindow, {
  construct: (Target, [options]) => refuseTheRest("BrowserWindow", new Target(options)),
  get(target, property) {
    if (property === "prototype" || typeof property === "symbol") return Reflect.get(target, property);
    throw new Error(`The stand-in for Electron does not implement BrowserWindow.${property}`);
  },
});
