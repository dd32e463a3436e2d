import { tellApp } from "./app.mjs";
import { browsers } from "./browser-window.mjs";
import { record } from "./record.mjs";
import { isCancelled, permissionAnswers } from "./session.mjs";

/**
 * What a test can ask of the stand-in, over the channel between parent and child process.
 * @type {Record<string, (argument: any) => unknown>}
 */
const commands = {
  endpoint: () => browsers[0]?.endpoint,
  complaints: () => browsers[0]?.complaints,
  // The menu holds functions; JSON leaves them out.
  record: () => record,
  permission: (/** @type {string} */ permission) => permissionAnswers(permission),
  cancelled: (/** @type {string} */ url) => isCancelled(url),
  "second-instance": () => tellApp("second-instance", {}, [], ""),
  "click-menu": (/** @type {string} */ label) => clickMenu(label),
};

process.on("message", async (/** @type {{ id: number, command: string, argument: unknown }} */ message) => {
  const { id, command, argument } = message;
  try {
    const work = commands[command];
    if (!work) throw new Error(`The stand-in knows no command ${command}`);
    const value = await work(argument);
    process.send?.({ id, json: JSON.stringify(value ?? null) });
  } catch (error) {
    process.send?.({ id, error: String(error) });
  }
});

// A test run that died must leave no browser behind; Chromium ends with the process that holds its pipe.
process.on("disconnect", () => process.exit(1));

/** @param {string} label */
function clickMenu(label) {
  const menus = /** @type {{ submenu: { label?: string, click?: () => void }[] }[]} */ (record.menu);
  const item = menus.flatMap((menu) => menu.submenu).find((candidate) => candidate.label === label);
  if (!item?.click) throw new Error(`There is no menu item ${label} to click`);
  item.click();
}
