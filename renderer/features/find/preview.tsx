import { calculatorById } from "#shared-lib/calculators/registry.ts";
import type { LiftLine } from "#shared-lib/contract/lift.ts";
import { Caution } from "../../ui/caution.tsx";
import { Mark } from "../../ui/mark.tsx";
import { RuledTitle } from "../../ui/ruled-title.tsx";
import { CalloutPreview } from "./callout-preview.tsx";
import { FixPreview } from "./fix-preview.tsx";
import { LiftPreview } from "./lift-preview.tsx";
import { NotePreview } from "./note-preview.tsx";
import { PlaceLink } from "./place-link.tsx";
import type { ResultItem } from "./result-groups.ts";
import { placeOfCalculator } from "./result-link.ts";
import { CheckPreview, VisitPreview } from "./work-previews.tsx";

interface PreviewProps {
  readonly item: ResultItem;
  readonly contextLift: LiftLine | undefined;
  readonly onUseLift: (id: string) => void;
}

/** The chosen result, with what is decided first and the way on. */
export function Preview({ item, contextLift, onUseLift }: PreviewProps) {
  switch (item.kind) {
    case "note":
      return <NotePreview id={item.id} contextLift={contextLift} />;
    case "calculator":
      return <CalculatorPreview id={item.id} contextLift={contextLift} />;
    case "fix":
      return <FixPreview id={item.id} />;
    case "callout":
      return <CalloutPreview id={item.id} />;
    case "lift":
      return <LiftPreview id={item.id} chosen={contextLift?.id === item.id} onUse={onUseLift} />;
    case "check":
      return <CheckPreview id={item.id} />;
    case "visit":
      return <VisitPreview id={item.id} />;
  }
}

function CalculatorPreview({ id, contextLift }: { id: string; contextLift: LiftLine | undefined }) {
  const calculator = calculatorById(id);
  if (calculator === undefined) return <p>This calculator belongs to a later Sillbook.</p>;
  const needed = calculator.inputs.filter((input) => !input.optional || input.prefilledFrom !== undefined);
  return (
    <>
      <div className="spread">
        <h2 className="find-preview-title">{calculator.name}</h2>
        <Mark kind="calculator" strong />
      </div>
      <p>{calculator.purpose}</p>
      <div className="buttons">
        <PlaceLink
          kind="first"
          mark="calculator"
          place={placeOfCalculator(id, contextLift?.id ?? null, null)}
        >
          {contextLift === undefined ? "Open the calculator" : `Open with ${contextLift.title}`}
        </PlaceLink>
      </div>
      <section>
        <RuledTitle>Takes</RuledTitle>
        <ul className="find-plain-list">
          {needed.map((input) => (
            <li key={input.key}>
              {input.label}
              {input.prefilledFrom !== undefined && <span className="soft">, filled in from the lift</span>}
            </li>
          ))}
        </ul>
      </section>
      {calculator.cautions.length > 0 && <Caution>{calculator.cautions.slice(0, 4).join(" ")}</Caution>}
    </>
  );
}
