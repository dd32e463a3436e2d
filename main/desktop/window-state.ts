import { readFileSync, renameSync, writeFileSync } from "node:fs";
import type { Rectangle } from "electron";

/** Smallest size at which every screen is whole; also the size of the first start's lower bound. */
export const smallestWindow = { width: 1024, height: 700 };
const firstWindow = { width: 1280, height: 800 };

/** Device-independent pixels. Without x and y the window is centred. */
export interface WindowState {
  readonly x?: number;
  readonly y?: number;
  readonly width: number;
  readonly height: number;
  readonly maximized: boolean;
}

/**
 * The place the window had last, if it would still be seen there: a display may have gone since.
 * @param workAreas of the displays that are there now
 */
export function readWindowState(file: string, workAreas: readonly Rectangle[]): WindowState {
  const stored = readStored(file);
  if (!stored) return { ...firstWindow, maximized: false };
  const size = {
    width: Math.max(stored.width, smallestWindow.width),
    height: Math.max(stored.height, smallestWindow.height),
    maximized: stored.maximized,
  };
  const { x, y } = stored;
  // The title bar has to be within reach, or the window could never be moved back.
  const isReachable = workAreas.some(
    (area) =>
      x < area.x + area.width - 100 &&
      x + size.width > area.x + 100 &&
      y >= area.y &&
      y < area.y + area.height - 40,
  );
  return isReachable ? { x, y, ...size } : size;
}

/** Losing this file costs a window's place and nothing else, so failing to write it is no failure of the program. */
export function writeWindowState(file: string, bounds: Rectangle, maximized: boolean): void {
  try {
    writeFileSync(`${file}.new`, JSON.stringify({ ...bounds, maximized }));
    renameSync(`${file}.new`, file);
  } catch {
    return;
  }
}

function readStored(file: string): (Rectangle & { maximized: boolean }) | undefined {
  try {
    const stored = JSON.parse(readFileSync(file, "utf8")) as Rectangle & { maximized: boolean };
    const numbers = [stored.x, stored.y, stored.width, stored.height];
    return numbers.every(Number.isSafeInteger)
      ? { ...stored, maximized: stored.maximized === true }
      : undefined;
  } catch {
    return undefined;
  }
}
