import { useRef, useState } from "react";
import type { CalloutLine } from "#shared-lib/contract/callout.ts";
import type { SillbookError } from "#shared-lib/errors.ts";
import type { DraftState } from "../../use-draft.ts";
import { useWrite } from "../../use-write.ts";
import { emptyCallout, insideFields, type NewCalloutDraft, saidOf, toLogInput } from "./new-callout-draft.ts";

export interface SavedCallout {
  readonly id: string;
  readonly number: string;
  readonly at: string;
  /** "saved", "saved and passed on", "caller added" */
  readonly how: string;
}

export interface SaveCallout {
  /** Saves the draft, passed on at once where a person is named; drops the draft only when it is on disk. */
  readonly log: (passTo: string | null) => Promise<void>;
  /** Adds the caller to an open callout of the lift instead. */
  readonly join: (line: CalloutLine) => Promise<void>;
  readonly pending: boolean;
  readonly error: SillbookError | undefined;
  readonly saved: SavedCallout | null;
}

export function useSaveCallout(draft: DraftState<NewCalloutDraft>, onSaved: () => void): SaveCallout {
  const log = useWrite("callout.log");
  const join = useWrite("callout.join");
  const change = useWrite("callout.change");
  const [saved, setSaved] = useState<SavedCallout | null>(null);
  // A second press while the first is on its way must not log the callout twice.
  const busy = useRef(false);
  const once = async (work: () => Promise<SavedCallout | null>) => {
    if (busy.current) return;
    busy.current = true;
    setSaved(null);
    for (const write of [log, join, change]) write.clearError();
    const done = await work().finally(() => {
      busy.current = false;
    });
    if (done === null) return;
    setSaved(done);
    await draft.drop();
    onSaved();
  };
  const { value } = draft;
  return {
    log: (passTo) =>
      once(async () => {
        const result = await log.run(toLogInput(value, passTo));
        if (!result.ok) return null;
        const how = passTo === null ? "saved" : "saved and passed on";
        return { ...result.value, at: new Date().toISOString(), how };
      }),
    join: (line) =>
      once(async () => {
        // People inside must not be lost in the second caller's words: they become the callout's own.
        if (value.inside === "people inside" && line.inside !== "people inside") {
          const settled = await change.run({
            id: line.id,
            version: line.version,
            fields: insideFields(value),
          });
          if (!settled.ok) return null;
        }
        const result = await join.run(joinInput(line.id, value));
        if (!result.ok) return null;
        return { id: line.id, number: line.number, at: new Date().toISOString(), how: "caller added" };
      }),
    pending: log.pending || join.pending || change.pending,
    error: log.error ?? change.error ?? join.error,
    saved,
  };
}

function joinInput(id: string, draft: NewCalloutDraft) {
  const { displayReading, insideCondition } = { ...emptyCallout, ...draft };
  const words = [
    saidOf(draft),
    displayReading.trim() === "" ? "" : `Display reading: ${displayReading.trim()}`,
    insideCondition.trim() === "" ? "" : `People inside: ${insideCondition.trim()}`,
  ];
  return {
    id,
    caller: draft.caller.trim(),
    callBack: draft.callBack.trim(),
    said: words.filter((part) => part !== "").join(". "),
  };
}
