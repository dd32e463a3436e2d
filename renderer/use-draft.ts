import { useCallback, useEffect, useRef, useState } from "react";
import type { SillbookError } from "#shared-lib/errors.ts";
import { asSillbookError } from "./as-sillbook-error.ts";
import { DraftKeeper } from "./draft-keeper.ts";
import { request } from "./shell-client.ts";

interface DraftFacts {
  /** When the newest text was kept on disk, ISO 8601; null while nothing is kept. */
  readonly keptAt: string | null;
  /** Why the newest text could not be kept; it is tried again until it can. */
  readonly error: SillbookError | undefined;
  /** False until the program said whether an earlier draft exists. */
  readonly ready: boolean;
  /** True when the value came from a draft of an earlier time. */
  readonly found: boolean;
}

export interface DraftState<Value> extends DraftFacts {
  readonly value: Value;
  readonly set: (next: Value | ((before: Value) => Value)) => void;
  /** After the record was saved, or the person gave it up: forgets the draft and goes back to `initial`. */
  readonly drop: () => Promise<void>;
}

const nothingKnown: DraftFacts = { keptAt: null, error: undefined, ready: false, found: false };

/**
 * Keeps what a person types under `key`, so that it survives a closed window or a crash. What was typed before the
 * answer about an earlier draft arrives wins over that draft.
 */
export function useDraft<Value>(key: string, initial: Value): DraftState<Value> {
  const [value, setValue] = useState(initial);
  const [facts, setFacts] = useState(nothingKnown);
  const keeper = useRef<DraftKeeper | undefined>(undefined);
  const touched = useRef(false);
  const newest = useRef(value);
  const first = useRef(initial);
  first.current = initial;

  const show = useCallback((next: Value) => {
    newest.current = next;
    setValue(next);
  }, []);
  useEffect(() => {
    const learn = (part: Partial<DraftFacts>) => setFacts((before) => ({ ...before, ...part }));
    const own = new DraftKeeper(key, {
      kept: (keptAt) => learn({ keptAt }),
      failed: (error) => learn({ error }),
    });
    keeper.current = own;
    touched.current = false;
    let gone = false;
    request("draft.find", { key }).then(
      ({ draft }) => {
        if (gone) return;
        learn({ ready: true });
        if (draft === null || touched.current) return;
        show(draft.value as Value);
        learn({ keptAt: draft.keptAt, found: true });
        own.adopt(draft.keptAt);
      },
      (reason: unknown) => {
        if (!gone) learn({ ready: true, error: asSillbookError(reason) });
      },
    );
    return () => {
      gone = true;
      own.close();
      show(first.current);
      setFacts(nothingKnown);
    };
  }, [key, show]);

  const set = useCallback(
    (next: Value | ((before: Value) => Value)) => {
      touched.current = true;
      show(typeof next === "function" ? (next as (before: Value) => Value)(newest.current) : next);
      keeper.current?.keep(newest.current);
    },
    [show],
  );
  const drop = useCallback(async () => {
    touched.current = true;
    show(first.current);
    setFacts({ ...nothingKnown, ready: true });
    await keeper.current?.drop();
  }, [show]);

  return { value, set, drop, ...facts };
}
