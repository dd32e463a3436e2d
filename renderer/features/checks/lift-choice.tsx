import { useEffect, useMemo, useState } from "react";
import type { LiftLine } from "#shared-lib/contract/lift.ts";
import { ComboField } from "../../ui/combo-field.tsx";
import { Kbd } from "../../ui/kbd.tsx";
import { useRead } from "../../use-read.ts";

interface LiftChoiceProps {
  /** The chosen lift, once it is read. */
  readonly lift: LiftLine | undefined;
  readonly liftId: string | null;
  readonly onLift: (id: string | null) => void;
  readonly problem: string | undefined;
}

/** A lift by parts of its site, street, name or plate. */
export function LiftChoice({ lift, liftId, onLift, problem }: LiftChoiceProps) {
  const [text, setText] = useState<string>();
  const shown = text ?? lift?.title ?? "";
  const asked = useRested(shown, 80);
  const found = useRead("lift.lookUp", { text: asked }, { keepPrevious: true, entities: ["lift", "site"] });
  const options = useMemo(
    () =>
      (found.value?.lifts ?? []).map((one) => ({
        id: one.id,
        words: one.title,
        note: [one.street, `${one.landingCount} landings`, one.state === "in service" ? "" : one.state]
          .filter((part) => part !== "")
          .join(" · "),
      })),
    [found.value],
  );
  return (
    <ComboField
      label="Lift"
      hint={<Kbd keys="K" />}
      text={shown}
      onText={setText}
      options={options}
      chosenId={liftId}
      onChoose={(option) => onLift(option?.id ?? null)}
      problem={problem}
      empty="No lift found. Lifts are entered under Lifts."
    />
  );
}

/** The text once typing rested: what is asked. */
function useRested(text: string, milliseconds: number): string {
  const [rested, setRested] = useState(text);
  useEffect(() => {
    const timer = setTimeout(() => setRested(text), milliseconds);
    return () => clearTimeout(timer);
  }, [text, milliseconds]);
  return rested;
}
