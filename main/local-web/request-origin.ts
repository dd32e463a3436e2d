import type { IncomingMessage } from "node:http";

/**
 * Whether a request was made by our own page, or by the person at the address line, and by no other page. Host stops a
 * foreign name that was pointed at this machine (DNS rebinding); Origin stops a foreign page that knows the port.
 * @param origin `http://127.0.0.1:<port>`
 */
export function isOwnRequest(request: Pick<IncomingMessage, "method" | "headers">, origin: string): boolean {
  const { host, origin: from, "sec-fetch-site": site, "sec-fetch-mode": mode } = request.headers;
  if (host !== new URL(origin).host) return false;
  if (from !== undefined && from !== origin) return false;
  // Browsers name the origin of everything that is not a plain GET; what does not is no page of ours.
  if (request.method !== "GET" && from === undefined) return false;
  // A link elsewhere may lead here (it brings no cookie, as ours is SameSite=Strict); a script or image may not.
  return site === undefined || site === "same-origin" || site === "none" || mode === "navigate";
}
