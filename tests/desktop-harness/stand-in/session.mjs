import { refuseTheRest } from "./refuse.mjs";

/** @type {((contents: null, permission: string, answer: (granted: boolean) => void) => void) | undefined} */
let requestHandler;
/** @type {((contents: null, permission: string) => boolean) | undefined} */
let checkHandler;
/** @type {((details: object) => boolean) | undefined} */
let deviceHandler;
/** @type {((details: { url: string }, answer: (response: { cancel?: boolean }) => void) => void) | undefined} */
let beforeRequest;

export const session = refuseTheRest("session", {
  defaultSession: refuseTheRest("session.defaultSession", {
    setPermissionRequestHandler(/** @type {typeof requestHandler} */ handler) {
      requestHandler = handler;
    },
    setPermissionCheckHandler(/** @type {typeof checkHandler} */ handler) {
      checkHandler = handler;
    },
    setDevicePermissionHandler(/** @type {typeof deviceHandler} */ handler) {
      deviceHandler = handler;
    },
    webRequest: refuseTheRest("webRequest", {
      onBeforeRequest(/** @type {typeof beforeRequest} */ handler) {
        beforeRequest = handler;
      },
    }),
  }),
});

/** What the program's handlers say to a permission; Electron grants what has no handler. @param {string} permission */
export function permissionAnswers(permission) {
  let granted = true;
  requestHandler?.(null, permission, (answer) => {
    granted = answer;
  });
  return {
    request: granted,
    check: checkHandler?.(null, permission) ?? true,
    device: deviceHandler?.({ deviceType: permission }) ?? true,
  };
}

/** Whether the program cancels a request. @param {string} url */
export function isCancelled(url) {
  let cancelled = false;
  beforeRequest?.({ url }, (response) => {
    cancelled = response.cancel === true;
  });
  return cancelled;
}
