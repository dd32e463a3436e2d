import type { Protocol } from "electron";
import { readBundleFile } from "../local-web/bundle-file.ts";
import { appScheme, isAppAddress } from "./app-address.ts";

/** Must be called before the program is ready. */
export function registerAppScheme(protocol: Pick<Protocol, "registerSchemesAsPrivileged">): void {
  protocol.registerSchemesAsPrivileged([
    { scheme: appScheme, privileges: { standard: true, secure: true, supportFetchAPI: true } },
  ]);
}

/**
 * Answers `app://bundle/...` with the files of the built screens and nothing else.
 * @param bundleFolder absolute path
 */
export function serveApp(protocol: Pick<Protocol, "handle">, bundleFolder: string): void {
  protocol.handle(appScheme, async (request) => {
    if (request.method !== "GET" || !isAppAddress(request.url)) return new Response(null, { status: 403 });
    const { status, headers, body } = await readBundleFile(bundleFolder, new URL(request.url).pathname);
    return new Response(status === 204 ? null : new Uint8Array(body), { status, headers });
  });
}
