import { findChromium } from "../../main/command-line/find-chromium.mjs";

/** The Chromium that `npm test` chose, else an installed one. */
export function chromiumPath() {
  const path = findChromium();
  if (!path)
    throw new Error("No Chromium found: run npm test, or name one in the environment variable CHROMIUM.");
  return path;
}

/**
 * Quiet on a machine without network. The sandbox of this test browser cannot work for root; it shows our own pages only.
 * @returns {string[]}
 */
export function chromiumArguments() {
  return [
    ...(process.getuid?.() === 0 ? ["--no-sandbox"] : []),
    "--disable-gpu",
    "--disable-quic",
    "--no-first-run",
    "--disable-background-networking",
    "--disable-component-update",
    "--disable-sync",
  ];
}
