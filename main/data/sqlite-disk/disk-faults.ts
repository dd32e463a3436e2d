/** A system call in which a test can make the disk fail. */
export type FaultyCall = "open" | "read" | "write" | "sync" | "truncate" | "remove" | "rename";

export interface DiskFault {
  readonly call: FaultyCall;
  /** For example "ENOSPC", "EACCES", "EIO". */
  readonly code: string;
  /** Only files whose path ends like this fail; any file if left out. */
  readonly pathEnd?: string;
  /** How many matching calls still succeed before the first one fails. */
  readonly after?: number;
  /** How many calls fail; all that follow if left out. */
  readonly times?: number;
  /** A failing write leaves this many bytes on the disk before it reports the error. */
  readonly partialBytes?: number;
}

interface PlannedFault {
  readonly fault: DiskFault;
  stillGood: number;
  stillFailing: number;
}

/** Makes chosen system calls fail. Only tests pass one; the program itself runs without. */
export class FaultPlan {
  #planned: PlannedFault[] = [];
  #struck = 0;

  add(fault: DiskFault): void {
    this.#planned.push({
      fault,
      stillGood: fault.after ?? 0,
      stillFailing: fault.times ?? Number.POSITIVE_INFINITY,
    });
  }

  /** The disk is well again. */
  clear(): void {
    this.#planned = [];
  }

  /** How many calls have failed so far; a test that expects a failure asserts that this grew. */
  get struck(): number {
    return this.#struck;
  }

  /** The fault that strikes this call, if any. Each question counts as one call. */
  strike(call: FaultyCall, path: string): DiskFault | undefined {
    for (const planned of this.#planned) {
      const { fault } = planned;
      if (fault.call !== call || planned.stillFailing <= 0) continue;
      if (fault.pathEnd !== undefined && !path.endsWith(fault.pathEnd)) continue;
      if (planned.stillGood > 0) {
        planned.stillGood -= 1;
        continue;
      }
      planned.stillFailing -= 1;
      this.#struck += 1;
      return fault;
    }
    return undefined;
  }
}

/** Throws what `node:fs` would throw when the plan says that this call fails. */
export function throwPlannedFault(faults: FaultPlan | undefined, call: FaultyCall, path: string): void {
  const fault = faults?.strike(call, path);
  if (fault) throw plannedError(fault, path);
}

export function plannedError(fault: DiskFault, path: string): Error {
  return Object.assign(new Error(`${fault.code}: planned fault, ${fault.call} '${path}'`), {
    code: fault.code,
  });
}
