import { readFileSync } from "node:fs";
import { refuseOtherThanJson } from "./plain-json.mjs";

/** Names of what the page and the stand-in call each other by. */
export const invokeBinding = "__standInInvoke";
export const deliverFunction = "__standInDeliver";

/**
 * The preload bundle as a script that runs before the page's own: `require("electron")` gives it a contextBridge and an
 * ipcRenderer bound to the stand-in's ipcMain. Any other module is refused, as a sandboxed preload would be.
 * @param {string} preload path of the bundle
 */
export function preloadScript(preload) {
  const bundle = readFileSync(preload, "utf8");
  return `(() => {
    if (window !== window.top) return;
    const refuseOtherThanJson = ${refuseOtherThanJson.toString()};
    const electron = (${pageElectron.toString()})(refuseOtherThanJson, ${JSON.stringify({ invokeBinding, deliverFunction })});
    const require = (name) => {
      if (name === "electron") return electron;
      throw new Error("A sandboxed preload cannot require " + name);
    };
    const module = { exports: {} };
    ((require, module, exports) => {\n${bundle}\n})(require, module, module.exports);
  })();`;
}

/**
 * Runs in the page. Stands alone.
 * @param {(value: unknown) => void} refuse
 * @param {{ invokeBinding: string, deliverFunction: string }} names
 */
function pageElectron(refuse, names) {
  /** @type {Map<string, Set<(event: object, value: unknown) => void>>} */
  const listeners = new Map();
  const page = /** @type {Record<string, any>} */ (/** @type {unknown} */ (window));
  page[names.deliverFunction] = (/** @type {string} */ channel, /** @type {string} */ json) => {
    for (const listener of listeners.get(channel) ?? []) listener({}, JSON.parse(json));
  };
  const refusing = (/** @type {string} */ name, /** @type {object} */ target) =>
    new Proxy(target, {
      get(object, property) {
        if (property in object) return Reflect.get(object, property);
        throw new Error(`The stand-in for Electron does not implement ${name}.${String(property)}`);
      },
    });
  const wrapped =
    (/** @type {(...args: unknown[]) => unknown} */ member) =>
    (/** @type {unknown[]} */ ...args) => {
      for (const argument of args) if (typeof argument !== "function") refuse(argument);
      return member(...args);
    };
  const contextBridge = {
    exposeInMainWorld(/** @type {string} */ name, /** @type {Record<string, any>} */ api) {
      const exposed = Object.entries(api).map(([key, member]) => {
        if (typeof member !== "function") refuse(member);
        return [key, typeof member === "function" ? wrapped(member) : member];
      });
      Object.defineProperty(window, name, { value: Object.freeze(Object.fromEntries(exposed)) });
    },
  };
  const ipcRenderer = {
    async invoke(/** @type {string} */ channel, /** @type {unknown} */ value) {
      refuse(value);
      const answer = await page[names.invokeBinding](channel, JSON.stringify(value));
      if ("thrown" in answer) throw new Error(answer.thrown);
      return JSON.parse(answer.json);
    },
    on(/** @type {string} */ channel, /** @type {(event: object, value: unknown) => void} */ listener) {
      if (!listeners.has(channel)) listeners.set(channel, new Set());
      listeners.get(channel)?.add(listener);
    },
    off(/** @type {string} */ channel, /** @type {(event: object, value: unknown) => void} */ listener) {
      listeners.get(channel)?.delete(listener);
    },
  };
  return refusing("electron", {
    contextBridge: refusing("contextBridge", contextBridge),
    ipcRenderer: refusing("ipcRenderer", ipcRenderer),
  });
}
