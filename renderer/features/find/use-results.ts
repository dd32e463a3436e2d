import { useCallback, useEffect, useMemo, useState } from "react";
import type { OutputOf } from "#shared-lib/contract/operations.ts";
import type { ReadState } from "../../use-read.ts";
import { useAllNotes } from "./all-notes.tsx";
import {
  foldGroups,
  groupsOfAnswer,
  type ResultGroup,
  type ResultItem,
  stepThrough,
} from "./result-groups.ts";
import { type FindQuestion, useFindAnswer } from "./use-find.ts";

const linesPerGroup = 5;
const notesPerGroup = 12;

export interface Results {
  /** False: no words, and all fault notes stand here. */
  readonly searched: boolean;
  readonly answer: OutputOf<"search.find"> | undefined;
  readonly read: Pick<ReadState<unknown>, "error" | "reload">;
  readonly groups: readonly ResultGroup[];
  readonly count: number;
  readonly chosen: ResultItem | undefined;
  readonly choose: (key: string | null) => void;
  readonly step: (step: 1 | -1) => void;
  readonly unfold: (groupKey: string) => void;
  /** What is shown answers what stands in the box now. */
  readonly current: boolean;
}

/** The lines under the box and which of them is chosen. */
export function useResults(question: FindQuestion): Results {
  const { text, asked, address } = question;
  const searched = asked.trim() !== "";
  const [unfolded, setUnfolded] = useState<ReadonlySet<string>>(new Set());
  const [picked, setPicked] = useState<string | null>(null);
  // New words are a new question: its best result is the chosen one, and no group is open.
  useEffect(() => {
    setUnfolded((before) => (before.size === 0 || asked === undefined ? before : new Set()));
    setPicked(null);
  }, [asked]);

  const found = useFindAnswer(question, unfolded);
  useAskAgainWhileWarming(found);
  const notes = useAllNotes(address, !searched);
  const groups = useMemo(() => {
    if (!searched) return foldGroups(notes.groups, unfolded, notesPerGroup);
    return found.value === undefined ? [] : foldGroups(groupsOfAnswer(found.value), unfolded, linesPerGroup);
  }, [searched, found.value, notes.groups, unfolded]);
  const items = groups.flatMap((group) => group.items);
  const chosen = items.find(({ key }) => key === picked) ?? (searched ? items[0] : undefined);

  return {
    searched,
    answer: searched ? found.value : undefined,
    read: searched ? found : notes.read,
    groups,
    count: notes.groups.reduce((sum, { total }) => sum + total, 0),
    chosen,
    choose: setPicked,
    step: (step) => setPicked(stepThrough(groups, chosen?.key ?? null, step)),
    unfold: useCallback((key: string) => setUnfolded((before) => new Set([...before, key])), []),
    current: asked.trim() === text.trim() && (searched ? !found.loading : true),
  };
}

const warmingPause = 500;

/** No event tells when the ranked index is ready, so the question is asked again until it answers. */
function useAskAgainWhileWarming({ value, reload }: ReadState<OutputOf<"search.find">>): void {
  useEffect(() => {
    if (value?.warming !== true) return;
    const again = setTimeout(reload, warmingPause);
    return () => clearTimeout(again);
  }, [value, reload]);
}
