import { useCallback, useEffect, useState } from "react";
import { calculatorById } from "#shared-lib/calculators/registry.ts";
import { request } from "../../shell-client.ts";
import { useGoTo } from "./place-link.tsx";
import type { ResultItem } from "./result-groups.ts";
import { type Place, placeOfCalculator, placeOfResult } from "./result-link.ts";
import type { FindQuestion } from "./use-find.ts";
import type { Results } from "./use-results.ts";

export interface OpenResult {
  readonly open: (item: ResultItem) => void;
  /** Opens the chosen result, once what stands in the box is answered: Enter may come before the answer. */
  readonly openChosen: () => void;
  /** Opens the calculator of the chosen result, filled in from the lift. */
  readonly openCalculator: () => void;
}

type Wanted = "result" | "calculator";

export function useOpenResult(question: FindQuestion, results: Results): OpenResult {
  const goTo = useGoTo();
  const [wanted, setWanted] = useState<Wanted | null>(null);
  const { settle } = question;
  const { lift } = question.address;
  const { chosen, current } = results;

  const leaveFor = useCallback(
    (place: Place | null) => {
      if (place === null) return;
      settle();
      goTo(place);
    },
    [settle, goTo],
  );
  const open = (item: ResultItem) => leaveFor(placeOfResult(item, lift));

  // biome-ignore lint/correctness/useExhaustiveDependencies: acts once, when the answer to the words is there.
  useEffect(() => {
    if (wanted === null || !current) return;
    setWanted(null);
    if (chosen === undefined) return;
    if (wanted === "result") open(chosen);
    else void calculatorOf(chosen, lift).then(leaveFor);
  }, [wanted, current]);

  return {
    open,
    openChosen: () => {
      settle();
      setWanted("result");
    },
    openCalculator: () => {
      settle();
      setWanted("calculator");
    },
  };
}

async function calculatorOf(item: ResultItem, liftId: string | null): Promise<Place | null> {
  if (item.kind === "calculator") return placeOfCalculator(item.id, liftId, null);
  if (item.kind !== "note") return null;
  try {
    const { note } = await request("faultNote.find", { id: item.id });
    const link = note.calculators.find(({ id }) => calculatorById(id) !== undefined);
    return link === undefined ? null : placeOfCalculator(link.id, liftId, note.id);
  } catch {
    // The preview beside it reads the same note and says what is wrong.
    return null;
  }
}
