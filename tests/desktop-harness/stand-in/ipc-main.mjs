import { refuseOtherThanJson } from "./plain-json.mjs";

/** @type {Map<string, (event: object, message: unknown) => Promise<unknown>>} */
const handlers = new Map();

export const ipcMain = {
  /** @param {string} channel @param {(event: object, message: unknown) => Promise<unknown>} handler */
  handle(channel, handler) {
    if (handlers.has(channel)) throw new Error(`Attempted to register a second handler for '${channel}'`);
    handlers.set(channel, handler);
  },
};

/**
 * Passes on what a page sent. Errors reach the page as text, as Electron does it.
 * @param {string} channel
 * @param {string} json
 * @param {object} event
 * @returns {Promise<{ json: string } | { thrown: string }>}
 */
export async function receive(channel, json, event) {
  const handler = handlers.get(channel);
  if (!handler) return { thrown: `No handler registered for '${channel}'` };
  try {
    const answer = await handler(event, JSON.parse(json));
    refuseOtherThanJson(answer);
    return { json: JSON.stringify(answer) };
  } catch (error) {
    return { thrown: `Error invoking remote method '${channel}': ${String(error)}` };
  }
}
