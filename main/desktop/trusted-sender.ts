import type { IpcMain, IpcMainInvokeEvent } from "electron";
import { appOrigin } from "./app-address.ts";

/** The only way a message from a page is received: it must come from the top frame of our own page. */
export function handleTrusted<Result>(
  ipcMain: Pick<IpcMain, "handle">,
  channel: string,
  handler: (message: unknown, sender: IpcMainInvokeEvent["sender"]) => Promise<Result>,
): void {
  ipcMain.handle(channel, async (event, message: unknown) => {
    if (!isTrusted(event)) throw new Error("A message from an unknown sender was refused.");
    return handler(message, event.sender);
  });
}

function isTrusted({ senderFrame }: Pick<IpcMainInvokeEvent, "senderFrame">): boolean {
  // A frame that is gone by now is null; a frame inside a page has a parent.
  return senderFrame !== null && senderFrame.parent === null && senderFrame.origin === appOrigin;
}
