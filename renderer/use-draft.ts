import { useCallback, useEffect, useRef, useState } from "react";
import { SillbookError } from "#shared-lib/errors.ts";
import { DraftKeeper } from "./draft-keeper.ts";
import { request } from "./shell-client.ts";

export interface DraftState<Value> {
  readonly value: Value;
  readonly set: (next: Value | ((before: Value) => Value)) => void;
  /** When the newest text was kept on disk, ISO 8601; null while nothing is kept. */
  readonly keptAt: string | null;
  /** Why the newest text could not be kept; it is tried again until it can. */
  readonly error: SillbookError | undefined;
  /** False until the program said whether an earlier draft exists. */
  readonly ready: boolean;
  /** True when the value came from a draft of an earlier time. */
  readonly found: boolean;
  /** After the record was saved, or the person gave it up: forgets the draft and goes back to `initial`. */
  readonly drop: () => Promise<void>;
}

/**
 * Keeps what a person types under `key`, so that it survives a closed window or a crash. What was typed before the
 * answer about an earlier draft arrives wins over that draft.
 */
export function useDraft<Value>(key: string, initial: Value): DraftState<Value> {
  const [value, setValue] = useState(initial);
  const [keptAt, setKeptAt] = useState<string | null>(null);
  const [error, setError] = useState<SillbookError>();
  const [ready, setReady] = useState(false);
  const [found, setFound] = useState(false);
  const keeper = useRef<DraftKeeper | undefined>(undefined);
  const touched = useRef(false);
  const newest = useRef(value);
  const first = useRef(initial);
  first.current = initial;

  useEffect(() => {
    const own = new DraftKeeper(key, { kept: setKeptAt, failed: setError });
    keeper.current = own;
    touched.current = false;
    let gone = false;
    findDraft(key).then(
      (draft) => {
        if (gone) return;
        if (draft !== null && !touched.current) {
          newest.current = draft.value as Value;
          setValue(newest.current);
          setKeptAt(draft.keptAt);
          setFound(true);
          own.adopt(draft.keptAt);
        }
        setReady(true);
      },
      (reason: unknown) => {
        if (gone) return;
        setError(reason instanceof SillbookError ? reason : new SillbookError("unexpected", String(reason)));
        setReady(true);
      },
    );
    return () => {
      gone = true;
      own.close();
      newest.current = first.current;
      setValue(first.current);
      setKeptAt(null);
      setError(undefined);
      setReady(false);
      setFound(false);
    };
  }, [key]);

  const set = useCallback((next: Value | ((before: Value) => Value)) => {
    touched.current = true;
    newest.current = typeof next === "function" ? (next as (before: Value) => Value)(newest.current) : next;
    setValue(newest.current);
    keeper.current?.keep(newest.current);
  }, []);

  const drop = useCallback(async () => {
    touched.current = true;
    newest.current = first.current;
    setValue(first.current);
    setFound(false);
    await keeper.current?.drop();
    setKeptAt(null);
  }, []);

  return { value, set, keptAt, error, ready, found, drop };
}

async function findDraft(key: string): Promise<{ value: unknown; keptAt: string } | null> {
  const answer = await request("draft.find", { key });
  return answer.draft;
}
