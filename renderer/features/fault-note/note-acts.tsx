import { calculatorById } from "#shared-lib/calculators/registry.ts";
import type { FaultNote } from "#shared-lib/contract/fault-note.ts";
import { useRead } from "../../use-read.ts";
import { PlaceLink } from "../find/place-link.tsx";
import { placeOfCalculator, placeOfCheckPlan } from "../find/result-link.ts";
import { separatesWords } from "./note-words.ts";

interface NoteActsProps {
  readonly note: FaultNote;
  readonly liftId: string | null;
  /** "Old Ropery Lofts, Lift 1" */
  readonly liftTitle: string | undefined;
}

/** The next check, and the ways on: the calculator filled in from the lift, the check plan. */
export function NoteActs({ note, liftId, liftTitle }: NoteActsProps) {
  const plans = useRead("check.plans", {}, { entities: [], enabled: note.checkPlans.length > 0 }).value;
  const next = note.checks[0];
  const links = note.calculators.flatMap((link) => {
    const calculator = calculatorById(link.id);
    return calculator === undefined ? [] : [{ ...link, name: calculator.name }];
  });
  const known = note.checkPlans.flatMap((id) => plans?.plans.find((plan) => plan.id === id) ?? []);
  if (next === undefined && links.length === 0 && known.length === 0) return null;
  const causeKeys = note.causes.map((cause) => cause.key);
  return (
    <div className="note-next">
      {next !== undefined && (
        <div>
          <h3>Next check</h3>
          <p>
            {next.title}. {separatesWords(next, causeKeys)}
          </p>
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
