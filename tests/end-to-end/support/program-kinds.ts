import { desktopObstacle } from "../../../main/command-line/desktop-shell.mjs";
import { findElectron } from "../../../main/command-line/electron-binary.mjs";
import type { ProgramKind } from "./start-program.ts";

const obstacle = findElectron()
  ? desktopObstacle({ platform: process.platform, env: process.env, userId: process.getuid?.() })
  : "no Electron binary is installed";

if (obstacle) console.log(`Real Electron is left out: ${obstacle}. Its stand-in runs the same specs.`);

const electron: readonly ProgramKind[] = obstacle ? [] : ["electron"];

/** The ways in which what may differ between the shells is run on this machine: starting, closing, drafts, the whole job. */
export const programKinds: readonly ProgramKind[] = ["local-web", "desktop-harness", ...electron];

/**
 * For what happens inside one screen. The pages are the same files in both shells and talk through the same client, so they
 * are run in one of them here, and in the real window too where there is one.
 */
export const screenKinds: readonly ProgramKind[] = ["local-web", ...electron];
