import { useCallback, useEffect, useRef, useState } from "react";
import { anyEntity, type ProgramEvent } from "#shared-lib/contract/operation.ts";
import type { InputOf, OperationName, OutputOf } from "#shared-lib/contract/operations.ts";
import type { SillbookError } from "#shared-lib/errors.ts";
import { asSillbookError } from "./as-sillbook-error.ts";
import { onProgramEvent, request } from "./shell-client.ts";

export interface ReadOptions {
  /** False: nothing is asked and the last value goes. For a search box that is still empty. */
  readonly enabled?: boolean;
  /** Read again only when one of these entities changed; left out: after any change. */
  readonly entities?: readonly string[];
  /** Keep showing the answer to the former input until the new one is there. For lists that follow typing. */
  readonly keepPrevious?: boolean;
}

export interface ReadState<Value> {
  readonly value: Value | undefined;
  readonly error: SillbookError | undefined;
  readonly loading: boolean;
  readonly reload: () => void;
}

interface Answer<Value> {
  readonly inputKey: string;
  readonly value: Value | undefined;
  readonly error: SillbookError | undefined;
}

/**
 * Reads, and reads again whenever what it shows may have changed. The old value stays while it reloads; an answer
 * that was overtaken by a newer question is ignored. A failed reload keeps the value and reports the error beside it.
 */
export function useRead<Name extends OperationName>(
  name: Name,
  input: InputOf<Name>,
  options: ReadOptions = {},
): ReadState<OutputOf<Name>> {
  const { enabled = true, entities, keepPrevious = false } = options;
  const inputKey = `${name} ${JSON.stringify(input)}`;
  const [answer, setAnswer] = useState<Answer<OutputOf<Name>>>();
  const [round, setRound] = useState(0);
  const [busy, setBusy] = useState(enabled);
  const latestInput = useRef(input);
  latestInput.current = input;

  const reload = useCallback(() => setRound((before) => before + 1), []);
  useReloadOnChange(entities, reload, enabled);

  // biome-ignore lint/correctness/useExhaustiveDependencies: inputKey stands for the input, round asks again.
  useEffect(() => {
    if (!enabled) {
      setAnswer(undefined);
      setBusy(false);
      return;
    }
    let overtaken = false;
    setBusy(true);
    request(name, latestInput.current).then(
      (value) => {
        if (overtaken) return;
        setAnswer({ inputKey, value, error: undefined });
        setBusy(false);
      },
      (reason: unknown) => {
        if (overtaken) return;
        const error = asSillbookError(reason);
        setAnswer((before) => ({
          inputKey,
          value: before?.inputKey === inputKey || keepPrevious ? before?.value : undefined,
          error,
        }));
        setBusy(false);
      },
    );
    return () => {
      overtaken = true;
    };
  }, [name, inputKey, enabled, round]);

  const belongs = answer !== undefined && (answer.inputKey === inputKey || keepPrevious);
  return {
    value: belongs ? answer.value : undefined,
    error: answer?.inputKey === inputKey ? answer.error : undefined,
    loading: busy || (enabled && answer?.inputKey !== inputKey),
    reload,
  };
}

function useReloadOnChange(
  entities: readonly string[] | undefined,
  reload: () => void,
  enabled: boolean,
): void {
  // An entity's name may hold a blank ("check step").
  const wanted = entities?.join("\n");
  useEffect(() => {
    if (!enabled) return;
    return onProgramEvent((event) => {
      if (event.kind === "changed" && concerns(event, wanted?.split("\n"))) reload();
    });
  }, [wanted, reload, enabled]);
}

function concerns(
  event: Extract<ProgramEvent, { kind: "changed" }>,
  entities: readonly string[] | undefined,
): boolean {
  if (entities === undefined) return true;
  return event.records.some((record) => record.entity === anyEntity || entities.includes(record.entity));
}
