import { useEffect, useRef } from "react";
import { runWrite } from "../../use-write.ts";
import type { Entries } from "./entries.ts";
import type { BenchForm } from "./use-bench-form.ts";

/** What was typed before a lift was chosen, and the draft it was kept under. */
export interface Carried {
  readonly entries: Entries;
  readonly key: string;
}

/**
 * Takes over what was typed without a lift; the old draft goes only when the new one, or the result, is on disk.
 * @param saved whether a result was saved here since
 */
export function useCarried(form: BenchForm, carried: Carried | null, saved: boolean): void {
  const taken = useRef(false);
  const dropped = useRef(false);
  const { ready, draft, setAll } = form;
  useEffect(() => {
    if (!ready || carried === null || taken.current) return;
    taken.current = true;
    setAll(carried.entries);
  }, [ready, carried, setAll]);
  useEffect(() => {
    const isKept = saved || draft.keptAt !== null;
    if (carried === null || !taken.current || dropped.current || !isKept) return;
    dropped.current = true;
    void runWrite("draft.drop", { key: carried.key });
  }, [carried, draft.keptAt, saved]);
}
