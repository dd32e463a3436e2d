import { calculatorById } from "#shared-lib/calculators/registry.ts";
import type { FaultNote } from "#shared-lib/contract/fault-note.ts";
import { formatQuantity } from "#shared-lib/format.ts";
import { Caution } from "../../ui/caution.tsx";
import { useRead } from "../../use-read.ts";
import { PlaceLink } from "../find/place-link.tsx";
import { placeOfCalculator, placeOfCheckPlan } from "../find/result-link.ts";
import { hazardWords } from "./hazard-parts.ts";

interface NoteActsProps {
  readonly note: FaultNote;
  readonly liftId: string | null;
  /** "Old Ropery Lofts, Lift 1" */
  readonly liftTitle: string | undefined;
}

/** The next check, and the ways on: the calculator filled in from the lift, the check plan. */
export function NoteActs({ note, liftId, liftTitle }: NoteActsProps) {
  const next = useRead("cause.rank", { noteId: note.id, liftId }).value?.next ?? null;
  const plans = useRead("check.plans", {}, { entities: [], enabled: note.checkPlans.length > 0 }).value;
  const links = note.calculators.flatMap((link) => {
    const calculator = calculatorById(link.id);
    return calculator === undefined ? [] : [{ ...link, name: calculator.name }];
  });
  const known = note.checkPlans.flatMap((id) => plans?.plans.find((plan) => plan.id === id) ?? []);
  if (next === null && links.length === 0 && known.length === 0) return null;
  return (
    <div className="note-next">
      {next !== null && (
        <div>
          <h3>{next.careful ? "Next check, dangerous work" : "Next check"}</h3>
          <p>
            {next.title}, {formatQuantity(next.minutes, "min")}. <span className="soft">{next.why}</span>
          </p>
          {next.careful && (
            <Caution>
              {next.hazard !== "none" && `${hazardWords[next.hazard]}. `}
              {next.caution}
            </Caution>
          )}
        </div>
      )}
      <div className="note-acts">
        {links.map((link, index) => (
          <PlaceLink
            key={link.id}
            place={placeOfCalculator(link.id, liftId, note.id)}
            kind={index === 0 ? "first" : "quiet"}
            mark="calculator"
          >
            {index === 0 && liftTitle !== undefined ? `Open with ${liftTitle}` : `Open ${link.name}`}
          </PlaceLink>
        ))}
        {known.map((plan) => (
          <PlaceLink key={plan.id} place={placeOfCheckPlan(plan.id, liftId)} kind="quiet">
            Start the check plan: {plan.name}
          </PlaceLink>
        ))}
      </div>
    </div>
  );
}
