import { refuseOtherThanJson } from "./plain-json.mjs";
import { record } from "./record.mjs";
import { refuseTheRest } from "./refuse.mjs";
import "./test-control.mjs";
import { app as appParts } from "./app.mjs";
import { BrowserWindow as WindowParts } from "./browser-window.mjs";
import { ipcMain as ipcMainParts } from "./ipc-main.mjs";
import { protocol as protocolParts } from "./protocol.mjs";
import { session as sessionParts } from "./session.mjs";

// Stands for the module "electron". A name that is not exported here cannot be imported; a member that is not
// implemented throws when it is used.

export const app = appParts;
export const BrowserWindow = WindowParts;
export const session = sessionParts;

export const ipcMain = refuseTheRest("ipcMain", ipcMainParts);
export const protocol = refuseTheRest("protocol", protocolParts);
export const dialog = refuseTheRest("dialog", {});

export const Menu = refuseTheRest("Menu", {
  buildFromTemplate(/** @type {object[]} */ template) {
    return template;
  },
  setApplicationMenu(/** @type {object[]} */ menu) {
    record.menu = menu;
  },
});

export const screen = refuseTheRest("screen", {
  getAllDisplays: () => [{ workArea: { x: 0, y: 0, width: 1920, height: 1080 } }],
});

export const shell = refuseTheRest("shell", {
  async openExternal(/** @type {string} */ address) {
    refuseOtherThanJson(address);
    record.openedAddresses.push(address);
  },
});
