import { contextBridge, ipcRenderer } from "electron";
import type { Envelope, OperationRequest, ProgramEvent } from "#shared-lib/contract/operation.ts";
import { eventChannel, requestChannel, type ShellCall } from "./channels.ts";

function ask(call: ShellCall): Promise<Envelope> {
  return ipcRenderer.invoke(requestChannel, call);
}

// Named functions only: neither ipcRenderer nor its events ever reach the page.
contextBridge.exposeInMainWorld("sillbook", {
  request: (request: OperationRequest): Promise<Envelope> => ask({ call: "request", request }),
  openExternal: (address: string): Promise<Envelope> => ask({ call: "open-external", address }),
  print: (): Promise<Envelope> => ask({ call: "print" }),
  onEvent: (listener: (event: ProgramEvent) => void): (() => void) => {
    const deliver = (_: unknown, event: ProgramEvent): void => listener(event);
    ipcRenderer.on(eventChannel, deliver);
    return () => {
      ipcRenderer.off(eventChannel, deliver);
    };
  },
});
