import { useMemo, useState } from "react";
import type { LandingState, ShaftChoice, ShaftSectionLift } from "#shared-lib/drawings/shaft-section.ts";
import { landingsByLevel } from "#shared-lib/drawings/shaft-section.ts";
import { Button } from "../../ui/button.tsx";
import { Caution } from "../../ui/caution.tsx";
import { ShaftSection } from "../../ui/drawings/shaft-section.tsx";
import { EmptyState } from "../../ui/empty-state.tsx";
import { type Concern, marksOf } from "./lift-drawing.ts";

interface LiftShaftProps {
  readonly lift: ShaftSectionLift;
  readonly driveRecorded: boolean;
  readonly concerns: readonly Concern[];
  readonly landingStates: Readonly<Record<string, LandingState>>;
  readonly chosenLandingId: string | null;
  readonly onChoose: (choice: ShaftChoice) => void;
  readonly onAddLandings: () => void;
}

/** The signature of the program: the lift to scale, from its own data, with what needs a person at its place. */
export function LiftShaft(props: LiftShaftProps) {
  const { lift, concerns, chosenLandingId } = props;
  const marks = useMemo(() => marksOf(concerns), [concerns]);
  const failedAt = concerns.find((one) => one.kind === "failed")?.landingId;
  const parked = lift.landings.find((one) => one.id === failedAt) ?? landingsByLevel(lift)[0];
  const [level, setLevel] = useState<number | null>(null);
  const carLevel = level ?? parked?.levelMetres ?? 0;
  if (lift.landings.length === 0) {
    return (
      <EmptyState action={<Button onPress={props.onAddLandings}>Enter the landings</Button>}>
        Here the shaft will stand to scale, once its landings and their levels are entered.
      </EmptyState>
    );
  }
  return (
    <div className="stack">
      <ShaftSection
        lift={lift}
        marks={marks}
        landingStates={props.landingStates}
        carLevelMetres={carLevel}
        onCarMove={setLevel}
        onChoose={props.onChoose}
        availableHeight={520}
        {...(chosenLandingId === null ? {} : { chosenLandingId })}
      />
      {!props.driveRecorded && (
        <p className="label soft">The drive is not recorded; it is drawn with the machine in the well.</p>
      )}
      <Caution>
        Inspection control while it moves; lock off before you touch. Never bridge car and landing doors
        together.
      </Caution>
    </div>
  );
}
