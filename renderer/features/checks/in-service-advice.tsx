import { useState } from "react";
import type { LiftLine } from "#shared-lib/contract/lift.ts";
import { Button } from "../../ui/button.tsx";
import { LiftStateDialog } from "../callout/lift-state-dialog-panel.tsx";

/** Plans that open doors or operate switches: nobody may meet the lift at a landing meanwhile. */
const worksOnLift: ReadonlySet<string> = new Set([
  "chain-free-of-bridges",
  "inspection-controls",
  "terminal-slowdown",
  "door-commands",
]);

interface InServiceAdviceProps {
  readonly lift: Pick<LiftLine, "id" | "state"> | undefined;
  readonly planId: string | undefined;
}

/** Advice and no block: the person on site decides, and the record says in which state the lift was. */
export function InServiceAdvice({ lift, planId }: InServiceAdviceProps) {
  const [changing, setChanging] = useState(false);
  if (lift === undefined || planId === undefined || !worksOnLift.has(planId)) return null;
  return (
    <>
      {lift.state === "in service" && (
        <div className="stack">
          <p>
            <b>The lift is recorded as in service.</b> This check opens doors or operates switches: take the
            lift out of service first, so that nobody calls it or walks up to it meanwhile.
          </p>
          <div className="buttons">
            <Button onPress={() => setChanging(true)}>Take the lift out of service</Button>
          </div>
        </div>
      )}
      {changing && <LiftStateDialog liftId={lift.id} onClose={() => setChanging(false)} />}
    </>
  );
}
