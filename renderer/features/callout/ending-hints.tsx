import { useNavigate } from "@tanstack/react-router";
import type { OutputOf } from "#shared-lib/contract/operations.ts";
import type { Ending } from "#shared-lib/words.ts";
import { Button } from "../../ui/button.tsx";
import { useRead } from "../../use-read.ts";
import { endingAdvice } from "./ending-draft.ts";
import { peopleAreInside, peopleWords } from "./event-parts.ts";

interface EndingHintsProps {
  readonly found: OutputOf<"callout.find">;
  readonly ending: Ending | null;
  readonly onClose: () => void;
}

/** Before anything else in the dialog: with people inside no ending is taken, whatever is chosen below. */
export function InsideFirst({ found }: Pick<EndingHintsProps, "found">) {
  const { callout, line } = found;
  if (peopleAreInside(line)) {
    return (
      <p className="pencil" role="status">
        <b>{peopleWords(callout.insideCount)} inside, not recorded as released.</b> Record people released
        first: until then the callout cannot be ended.
      </p>
    );
  }
  if (callout.inside === "not known") {
    return (
      <p className="pencil" role="status">
        <b>It is not known whether anyone is inside.</b> Settle that first, with “Correct what was written”:
        until then the callout cannot be ended.
      </p>
    );
  }
  return null;
}

/** What the ending does to the lift, and what would be missed. */
export function EndingHints({ found, ending, onClose }: EndingHintsProps) {
  const { callout, line, lift } = found;
  if (ending === null || peopleAreInside(line) || callout.inside === "not known") return null;
  return (
    <>
      <p>{endingAdvice(ending, lift?.state ?? null)}</p>
      {ending === "repaired" && <NoFix found={found} onClose={onClose} />}
    </>
  );
}

/** Allowed all the same: the engineer may not have reported yet. */
function NoFix({ found, onClose }: Pick<EndingHintsProps, "found" | "onClose">) {
  const { callout, line } = found;
  const navigate = useNavigate();
  const read = useRead("visit.list", { calloutId: callout.id }, { entities: ["visit", "recorded fix"] });
  if (read.value === undefined) return null;
  const hasFix = read.value.visits.some(({ fix }) => fix !== null);
  const wasThere = read.value.visits.length > 0 || line.made.includes("arrived");
  if (hasFix && wasThere) return null;
  const record = () => {
    onClose();
    void navigate({ to: "/callout/$id", params: { id: callout.id }, search: { visit: "new" } });
  };
  return (
    <div className="stack">
      <p>
        {hasFix
          ? "Nobody is recorded on site yet; record the visit first so that the next person finds it."
          : "No cause and fix are recorded yet; record the visit first so that the next person finds it."}
      </p>
      {callout.liftId !== null && (
        <div className="buttons">
          <Button onPress={record}>Record the visit</Button>
        </div>
      )}
    </div>
  );
}
