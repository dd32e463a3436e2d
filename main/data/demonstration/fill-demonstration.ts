import type { ProgramEvent } from "#shared-lib/contract/operation.ts";
import type { SqliteFile } from "../sqlite-disk/sqlite-file.ts";

export interface DemonstrationOptions {
  readonly folder: string;
  readonly programVersion: string;
  readonly now: number;
  readonly emit: (event: ProgramEvent) => void;
}

export function fillDemonstration(_file: SqliteFile, _options: DemonstrationOptions): void {
  throw new Error("not written yet");
}
