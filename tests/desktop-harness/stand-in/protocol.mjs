import { record } from "./record.mjs";

/** Stands for app://bundle: an address that Chromium takes for a secure origin, and that never leaves the machine. */
const harnessOrigin = "https://bundle.sillbook.invalid";
const appOrigin = "app://bundle";

/** @type {((request: Request) => Promise<Response>) | undefined} */
let appHandler;

export const protocol = {
  /** @param {unknown[]} schemes */
  registerSchemesAsPrivileged(schemes) {
    record.privileges = schemes;
  },
  /** @param {string} scheme @param {(request: Request) => Promise<Response>} handler */
  handle(scheme, handler) {
    if (scheme !== "app") throw new Error(`The stand-in for Electron serves app:// only, not ${scheme}`);
    appHandler = handler;
  },
};

/** @param {string} address as Chromium knows it */
export function toAppAddress(address) {
  return address.startsWith(`${harnessOrigin}/`) || address === harnessOrigin
    ? appOrigin + address.slice(harnessOrigin.length)
    : address;
}

/** @param {string} address as the program knows it */
export function toHarnessAddress(address) {
  return address.startsWith(`${appOrigin}/`) ? harnessOrigin + address.slice(appOrigin.length) : address;
}

/**
 * Answers an intercepted request through the program's own protocol handler.
 * @param {import("playwright").Route} route
 * @param {import("playwright").Request} request
 */
export async function answerFromApp(route, request) {
  if (!appHandler) throw new Error("A page asked for app:// before protocol.handle was called");
  const method = request.method();
  const response = await appHandler(new Request(toAppAddress(request.url()), { method }));
  await route.fulfill({
    status: response.status,
    headers: Object.fromEntries(response.headers),
    body: Buffer.from(await response.arrayBuffer()),
  });
}
