import { type ReactNode, useMemo, useState } from "react";
import type { Calculation } from "#shared-lib/contract/calculation.ts";
import type { OutputOf } from "#shared-lib/contract/operations.ts";
import type { ShaftChoice } from "#shared-lib/drawings/shaft-section.ts";
import { ErrorNote } from "../../ui/error-note.tsx";
import { useRead } from "../../use-read.ts";
import { openStripsOf } from "../bridges/bridge-parts.ts";
import { ConcernDetail } from "./concern-detail.tsx";
import { type Concern, concernsOf, landingStatesOf, sectionLiftOf } from "./lift-drawing.ts";
import { LiftShaft } from "./lift-shaft.tsx";
import { OpenList } from "./open-list.tsx";
import { PlaceDetail } from "./place-detail.tsx";
import { useOpenCallouts } from "./use-open-callouts.ts";

interface LiftPictureProps {
  readonly found: OutputOf<"lift.find">;
  readonly calculations: readonly Calculation[];
  /** Under the drawing. */
  readonly below: ReactNode;
  /** Under what was chosen, beside the drawing. */
  readonly beside: ReactNode;
}

/** The shaft at the left; at the right what was chosen on it, what else is open, and the timeline. */
export function LiftPicture({ found, calculations, below, beside }: LiftPictureProps) {
  const { lift, landings, signals } = found;
  const register = useRead("bridge.list", { liftId: lift.id }, { entities: ["bridge", "danger"] });
  const states = useRead("check.landingStates", { liftId: lift.id });
  const callouts = useOpenCallouts(lift.id);
  const [choice, setChoice] = useState<ShaftChoice | null>(null);
  const places = states.value?.places ?? noPlaces;
  const concerns = useMemo(
    () =>
      concernsOf({
        landings,
        strips: register.value === undefined ? [] : openStripsOf(register.value),
        places,
        callouts: callouts.placed,
      }),
    [landings, register.value, places, callouts.placed],
  );
  const section = useMemo(
    () => sectionLiftOf({ lift, landings, signals, calculations }),
    [lift, landings, signals, calculations],
  );
  const landingStates = useMemo(() => landingStatesOf(landings, places), [landings, places]);
  const chosen = chosenConcern(concerns, choice);
  const place = placeOf(choice, chosen);
  const same = { lift, landings, places, calculations };
  return (
    <div className="lift-grid">
      <div className="lift-side">
        <LiftShaft
          lift={section}
          driveRecorded={lift.driveKind !== null}
          concerns={concerns}
          landingStates={landingStates}
          chosenLandingId={place?.landingId ?? chosen?.landingId ?? null}
          onChoose={setChoice}
          onAddLandings={() => document.getElementById("landings")?.scrollIntoView()}
        />
        {below}
      </div>
      <div className="lift-side">
        <ErrorNote error={states.error} onRetry={states.reload} />
        {chosen !== null && <ConcernDetail {...same} concern={chosen} />}
        {chosen === null && place !== null && (
          <PlaceDetail
            {...same}
            signals={signals}
            landing={landings.find((landing) => landing.id === place.landingId) ?? null}
            part={place.part}
          />
        )}
        <OpenList
          concerns={concerns}
          chosenId={chosen?.id ?? null}
          onChoose={(concern) => setChoice(markChoice(concern))}
        />
        {beside}
      </div>
    </div>
  );
}

const noPlaces: OutputOf<"check.landingStates">["places"] = [];

/** A concern without a place on the drawing can be chosen from the list all the same. */
function markChoice({ id, kind, number, words, place }: Concern): ShaftChoice {
  return { kind: "mark", mark: { id, kind, number, words, place: place ?? { part: "machine" } } };
}

/** What was chosen; before anything was chosen a danger, else the first failed place, which people came to see. */
function chosenConcern(concerns: readonly Concern[], choice: ShaftChoice | null): Concern | null {
  if (choice === null) {
    const first = (kind: Concern["kind"]) => concerns.find((concern) => concern.kind === kind);
    return first("danger") ?? first("failed") ?? concerns[0] ?? null;
  }
  if (choice.kind === "mark") return concerns.find((concern) => concern.id === choice.mark.id) ?? null;
  return null;
}

function placeOf(choice: ShaftChoice | null, chosen: Concern | null) {
  if (choice === null || chosen !== null || choice.kind === "mark") return null;
  if (choice.kind === "landing") return { landingId: choice.landingId, part: null };
  return { landingId: choice.landingId ?? null, part: choice.part };
}
