import { useState } from "react";
import type { Calculator } from "#shared-lib/calculators/calculator.ts";
import type { Landing } from "#shared-lib/contract/lift.ts";
import type { OutputOf } from "#shared-lib/contract/operations.ts";
import { formatLevel } from "#shared-lib/format.ts";
import { Button } from "../../ui/button.tsx";
import type { FieldOption } from "../../ui/choices-list.tsx";
import { ComboField } from "../../ui/combo-field.tsx";
import { Dialog } from "../../ui/dialog.tsx";
import { ErrorNote } from "../../ui/error-note.tsx";
import { SelectField } from "../../ui/select-field.tsx";
import { useRead } from "../../use-read.ts";
import type { BenchPlace } from "./bench-place.ts";

interface LiftDialogProps {
  readonly calculator: Calculator;
  readonly place: BenchPlace;
  /** Words of the lift that is chosen now. */
  readonly liftTitle: string;
  readonly onClose: () => void;
  readonly onChoose: (place: BenchPlace) => void;
}

const noLanding = "none";

/** Whether a calculator is about one landing, so that its results are kept there. */
export function concernsLanding(calculator: Calculator): boolean {
  return calculator.inputs.some((field) => field.prefilledFrom === "landing.marking");
}

type FoundLift = OutputOf<"lift.lookUp">["lifts"][number];

function liftOption(line: FoundLift): FieldOption {
  const note = line.because === "" ? line.street : `${line.street} · found by ${line.because}`;
  return { id: line.id, words: line.title, note };
}

/** Highest first, as they stand. */
function landingOptions(landings: readonly Landing[]): readonly FieldOption[] {
  const standing = [...landings].sort((one, other) => other.level - one.level);
  return [
    { id: noLanding, words: "no landing" },
    ...standing.map(({ id, marking, name, level }) => ({
      id,
      words: name === "" ? marking : `${marking}, ${name}`,
      note: `${formatLevel(level)}\u00a0m`,
    })),
  ];
}

/** Which lift, and at which landing: what is typed for the present one stays there as a draft. */
export function LiftDialog({ calculator, place, liftTitle, onClose, onChoose }: LiftDialogProps) {
  const [text, setText] = useState(liftTitle);
  const [liftId, setLiftId] = useState(place.lift);
  const [landingId, setLandingId] = useState(place.landing);
  const [problem, setProblem] = useState<string>();
  const found = useRead(
    "lift.lookUp",
    { text, limit: 8 },
    { keepPrevious: true, entities: ["lift", "site"] },
  );
  const lift = useRead("lift.find", { id: liftId ?? "" }, { enabled: liftId !== null });
  const asksLanding = concernsLanding(calculator);
  const options = (found.value?.lifts ?? []).map(liftOption);
  const choose = (): void => {
    if (liftId === null) setProblem("Choose a lift from the list. A result is kept with its lift.");
    else onChoose({ ...place, lift: liftId, landing: asksLanding ? landingId : null });
  };
  return (
    <Dialog
      title="Which lift"
      open
      onClose={onClose}
      actions={
        <LiftActs
          hasLift={place.lift !== null}
          {...{ choose, onClose }}
          onNone={() => onChoose({ ...place, lift: null, landing: null })}
        />
      }
    >
      <ErrorNote error={found.error ?? lift.error} />
      <ComboField
        label="Lift"
        text={text}
        onText={setText}
        options={options}
        chosenId={liftId}
        onChoose={(option) => {
          setProblem(undefined);
          setLiftId(option?.id ?? null);
          setLandingId(null);
        }}
        problem={problem}
        autoFocus
      />
      {asksLanding && liftId !== null && (
        <SelectField
          label="Landing"
          options={landingOptions(lift.value?.landings ?? [])}
          value={landingId ?? noLanding}
          onChange={(id) => setLandingId(id === noLanding ? null : id)}
        />
      )}
    </Dialog>
  );
}

interface LiftActsProps {
  readonly hasLift: boolean;
  readonly choose: () => void;
  readonly onNone: () => void;
  readonly onClose: () => void;
}

function LiftActs({ hasLift, choose, onNone, onClose }: LiftActsProps) {
  return (
    <>
      <Button kind="first" onPress={choose}>
        Take this lift
      </Button>
      {hasLift && <Button onPress={onNone}>No lift</Button>}
      <Button kind="quiet" onPress={onClose}>
        Back
      </Button>
    </>
  );
}
