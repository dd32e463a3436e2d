import fs from "node:fs";

/** Flushes the entries of a folder, so that a new or renamed file survives a power cut. Windows offers no such call. */
export function syncFolder(folder: string): void {
  if (process.platform === "win32") return;
  const descriptor = fs.openSync(folder, fs.constants.O_RDONLY);
  try {
    fs.fsyncSync(descriptor);
  } finally {
    fs.closeSync(descriptor);
  }
}

export function removeIfThere(file: string): void {
  fs.rmSync(file, { force: true });
}
