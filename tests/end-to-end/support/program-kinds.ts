import { desktopObstacle } from "../../../main/command-line/desktop-shell.mjs";
import { findElectron } from "../../../main/command-line/electron-binary.mjs";
import type { ProgramKind } from "./start-program.ts";

const obstacle = findElectron()
  ? desktopObstacle({ platform: process.platform, env: process.env, userId: process.getuid?.() })
  : "no Electron binary is installed";

if (obstacle) console.log(`Real Electron is left out: ${obstacle}. Its stand-in runs the same specs.`);

/** The ways in which the end-to-end specs run on this machine. */
export const programKinds: readonly ProgramKind[] = [
  "local-web",
  "desktop-harness",
  ...(obstacle ? [] : (["electron"] as const)),
];
