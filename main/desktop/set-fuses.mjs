import { FuseV1Options, FuseVersion } from "@electron/fuses";

/**
 * What the packaged binary may still be made to do. All are decided here; a fuse that a later Electron brings stops
 * the packaging until it is decided too.
 * @type {import("@electron/fuses").FuseV1Config & { strictlyRequireAllFuses: true }}
 */
export const fuses = {
  version: FuseVersion.V1,
  strictlyRequireAllFuses: true,
  [FuseV1Options.RunAsNode]: false,
  [FuseV1Options.EnableCookieEncryption]: true,
  [FuseV1Options.EnableNodeOptionsEnvironmentVariable]: false,
  [FuseV1Options.EnableNodeCliInspectArguments]: false,
  [FuseV1Options.EnableEmbeddedAsarIntegrityValidation]: true,
  [FuseV1Options.OnlyLoadAppFromAsar]: true,
  // There is no snapshot of our own.
  [FuseV1Options.LoadBrowserProcessSpecificV8Snapshot]: false,
  // Pages come from app://, never from file://.
  [FuseV1Options.GrantFileProtocolExtraPrivileges]: false,
};

/**
 * electron-builder calls this when the program is put together and not yet signed.
 * @param {import("electron-builder").AfterPackContext} context
 */
export async function afterPack(context) {
  await context.packager.addElectronFuses(context, fuses);
}
