import type { LiftLine } from "#shared-lib/contract/lift.ts";
import { LiftState } from "../../ui/lift-state.tsx";
import { Mark } from "../../ui/mark.tsx";

interface LiftRowProps {
  readonly lift: LiftLine;
  /** "Lift 2" under its site, "Kittiwake House, Lift 2" in a list of everywhere. */
  readonly title: string;
  readonly because?: string;
}

/** A lift as one line: what it is, its state, what is open on it. */
export function LiftRow({ lift, title, because = "" }: LiftRowProps) {
  const { landingCount, driveKind, controllerFamily, plateNumber, openCallouts } = lift;
  const facts = [
    landingCount === 0 ? "no landings entered" : `${landingCount} landings`,
    driveKind ?? "",
    controllerFamily,
    plateNumber,
  ].filter((part) => part !== "");
  return (
    <span className="lift-row">
      <span>
        <span className="strong">{title}</span>
        <span className="soft label lift-row-facts">{facts.join(" · ")}</span>
        {because !== "" && <span className="soft label lift-row-facts">found by {because}</span>}
      </span>
      <LiftState lift={lift} short />
      <span className="lift-row-open">
        {openCallouts > 0 && (
          <Mark
            kind="received"
            word={openCallouts === 1 ? "1 open callout" : `${openCallouts} open callouts`}
          />
        )}
      </span>
    </span>
  );
}
