import type { Session } from "electron";
import { isAppAddress } from "./app-address.ts";

const localProtocols = new Set(["blob:", "data:", "devtools:"]);

/** The program needs no permission of a browser and no network: every one is denied, whoever asks. */
export function applySessionRules(
  session: Pick<
    Session,
    "setPermissionRequestHandler" | "setPermissionCheckHandler" | "setDevicePermissionHandler" | "webRequest"
  >,
): void {
  session.setPermissionRequestHandler((_contents, _permission, answer) => answer(false));
  session.setPermissionCheckHandler(() => false);
  session.setDevicePermissionHandler(() => false);
  session.webRequest.onBeforeRequest((details, answer) => answer({ cancel: !isLocal(details.url) }));
}

function isLocal(address: string): boolean {
  return isAppAddress(address) || localProtocols.has(new URL(address).protocol);
}
