import { Link } from "@tanstack/react-router";
import { terminalSlowdown } from "#shared-lib/calculators/terminal-slowdown.ts";
import { zoneSensors } from "#shared-lib/calculators/zone-sensors.ts";
import { buttonClass } from "../../ui/button.tsx";
import { MarkShape } from "../../ui/mark.tsx";
import type { CheckStep } from "./check-types.ts";

interface WaysOnProps {
  readonly step: CheckStep;
  readonly liftId: string;
}

/** A failed step leads to the fault notes that tell of it, and to the calculator that works it out. */
export function WaysOn({ step, liftId }: WaysOnProps) {
  const calculator = calculatorOf(step);
  return (
    <nav className="buttons" aria-label={`Ways on from: ${step.title}`}>
      <Link className={buttonClass("plain")} to="/find" search={{ q: step.searchWords, lift: liftId }}>
        <MarkShape kind="search" />
        <span className="button-word">Fault notes about this</span>
      </Link>
      {calculator !== undefined && (
        <Link
          className={buttonClass("plain")}
          to="/bench/$calculator"
          params={{ calculator: calculator.id }}
          search={{ lift: liftId, ...(step.landingId === null ? {} : { landing: step.landingId }) }}
        >
          <MarkShape kind="calculator" />
          <span className="button-word">Work it out: {calculator.name}</span>
        </Link>
      )}
    </nav>
  );
}

function calculatorOf({ part, key }: CheckStep): { readonly id: string; readonly name: string } | undefined {
  if (part === "zone-magnet") return zoneSensors;
  return key.startsWith("slowdown-distance") ? terminalSlowdown : undefined;
}
