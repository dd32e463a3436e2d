import { useCallback, useEffect, useRef, useState } from "react";
import type { InputOf, OperationName, OutputOf } from "#shared-lib/contract/operations.ts";
import type { SillbookError } from "#shared-lib/errors.ts";
import { asSillbookError } from "./as-sillbook-error.ts";
import { request } from "./shell-client.ts";
import { writeFailed, writeSaved, writeStarted } from "./use-saved-state.ts";

export type WriteResult<Value> =
  | { readonly ok: true; readonly value: Value }
  | { readonly ok: false; readonly error: SillbookError };

export interface WriteState<Name extends OperationName> {
  /** Never throws: the caller keeps what was typed unless `ok` is true. */
  readonly run: (input: InputOf<Name>) => Promise<WriteResult<OutputOf<Name>>>;
  readonly pending: boolean;
  /** The newest refusal; goes when the next run starts. */
  readonly error: SillbookError | undefined;
  /** When the newest run was on disk, ISO 8601. */
  readonly savedAt: string | undefined;
  readonly clearError: () => void;
}

/** One write of the program. "Saved" is said only after the program answered that the record is on disk. */
export function useWrite<Name extends OperationName>(name: Name): WriteState<Name> {
  const [pendingRuns, setPendingRuns] = useState(0);
  const [error, setError] = useState<SillbookError>();
  const [savedAt, setSavedAt] = useState<string>();
  const shown = useRef(true);
  useEffect(() => {
    shown.current = true;
    return () => {
      shown.current = false;
    };
  }, []);

  const run = useCallback(
    async (input: InputOf<Name>): Promise<WriteResult<OutputOf<Name>>> => {
      setPendingRuns((before) => before + 1);
      setError(undefined);
      const result = await runWrite(name, input);
      if (shown.current) {
        setPendingRuns((before) => before - 1);
        if (result.ok) setSavedAt(new Date().toISOString());
        else setError(result.error);
      }
      return result;
    },
    [name],
  );
  const clearError = useCallback(() => setError(undefined), []);
  return { run, pending: pendingRuns > 0, error, savedAt, clearError };
}

/** A write outside a component's own state; the foot of the column still follows it. */
export async function runWrite<Name extends OperationName>(
  name: Name,
  input: InputOf<Name>,
): Promise<WriteResult<OutputOf<Name>>> {
  writeStarted();
  try {
    const value = await request(name, input);
    writeSaved(new Date().toISOString());
    return { ok: true, value };
  } catch (reason) {
    const error = asSillbookError(reason);
    writeFailed(error);
    return { ok: false, error };
  }
}
