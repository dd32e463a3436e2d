import fs from "node:fs";
import { type FaultPlan, plannedError, throwPlannedFault } from "./disk-faults.ts";

const copyPieceBytes = 1 << 20;

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

/** Whether the journal beside a database file holds a transaction that is not finished. An ended one starts with zero. */
export function hasLiveJournal(databaseFile: string): boolean {
  const journal = `${databaseFile}-journal`;
  if (!fs.existsSync(journal)) return false;
  const descriptor = fs.openSync(journal, "r");
  try {
    const first = Buffer.alloc(1);
    return fs.readSync(descriptor, first, 0, 1, 0) === 1 && first[0] !== 0;
  } finally {
    fs.closeSync(descriptor);
  }
}

export function removeIfThere(file: string): void {
  fs.rmSync(file, { force: true });
}

/** Creates a file that must not exist yet and flushes it. Only this user can read it. */
export function writeNewFile(file: string, content: string): void {
  const descriptor = fs.openSync(file, "wx", 0o600);
  try {
    fs.writeFileSync(descriptor, content);
    fs.fsyncSync(descriptor);
  } finally {
    fs.closeSync(descriptor);
  }
}

/** Copies into a file that must not exist yet and flushes it. Returns the size in bytes. Half a copy may be left behind. */
export function copyDurably(source: string, target: string, faults?: FaultPlan): number {
  const from = fs.openSync(source, "r");
  try {
    throwPlannedFault(faults, "open", target);
    const to = fs.openSync(target, "wx", 0o600);
    try {
      const bytes = copyPieces(from, to, target, faults);
      throwPlannedFault(faults, "sync", target);
      fs.fsyncSync(to);
      return bytes;
    } finally {
      fs.closeSync(to);
    }
  } finally {
    fs.closeSync(from);
  }
}

function copyPieces(from: number, to: number, target: string, faults: FaultPlan | undefined): number {
  const piece = Buffer.allocUnsafe(copyPieceBytes);
  let total = 0;
  for (;;) {
    const got = fs.readSync(from, piece, 0, piece.length, total);
    if (got === 0) return total;
    const fault = faults?.strike("write", target);
    const end = fault ? Math.min(got, fault.partialBytes ?? 0) : got;
    for (let put = 0; put < end; ) put += fs.writeSync(to, piece, put, end - put, total + put);
    if (fault) throw plannedError(fault, target);
    total += got;
  }
}

/** Gives a flushed file its final name, in place of one that may be there, and flushes the folder. */
export function renameDurably(file: string, name: string, folder: string, faults?: FaultPlan): void {
  throwPlannedFault(faults, "rename", name);
  fs.renameSync(file, name);
  syncFolder(folder);
}
