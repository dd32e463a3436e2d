import type { Calculation } from "#shared-lib/contract/calculation.ts";
import type { Landing, Lift, Signal } from "#shared-lib/contract/lift.ts";
import { formatDayAndTime, formatLevel } from "#shared-lib/format.ts";
import { Mark } from "../../ui/mark.tsx";
import { RuledTitle } from "../../ui/ruled-title.tsx";
import type { CheckedPlace } from "./lift-drawing.ts";
import { partNames } from "./part-names.ts";
import { ZoneDetail } from "./zone-detail.tsx";

interface PlaceDetailProps {
  readonly lift: Lift;
  readonly landing: Landing | null;
  readonly part: CheckedPlace["part"] | null;
  readonly signals: readonly Signal[];
  readonly places: readonly CheckedPlace[];
  readonly calculations: readonly Calculation[];
}

/** A landing or a part of the drawing that nothing is wrong with, or not known: what was checked there last. */
export function PlaceDetail({ lift, landing, part, signals, places, calculations }: PlaceDetailProps) {
  const here = places.filter(
    (place) => place.landingId === (landing?.id ?? null) && (part === null || place.part === part),
  );
  const atLanding = signals.filter((signal) => landing !== null && signal.landingId === landing.id);
  const title = [
    landing === null ? null : `Landing ${landing.marking}${landing.name === "" ? "" : `, ${landing.name}`}`,
    part === null ? null : partNames[part],
  ]
    .filter((words) => words !== null)
    .join(": ");
  return (
    <section aria-live="polite">
      <RuledTitle>{title}</RuledTitle>
      {landing !== null && (
        <p className="soft">
          Level {formatLevel(landing.level)}&nbsp;m, entrance {entranceWords[landing.entrances]}
        </p>
      )}
      {here.length === 0 ? (
        <p className="soft">No check plan looks at this place.</p>
      ) : (
        <ul className="comparisons">
          {here.map((place) => (
            <PlaceLine key={place.part} place={place} />
          ))}
        </ul>
      )}
      {atLanding.length > 0 && <p className="label">Signals: {atLanding.map(signalWords).join("; ")}</p>}
      {landing !== null && (part === null || part === "zone-magnet") && (
        <ZoneDetail lift={lift} landing={landing} calculations={calculations} />
      )}
    </section>
  );
}

const entranceWords: Readonly<Record<Landing["entrances"], string>> = {
  front: "front",
  rear: "rear",
  both: "front and rear",
};

function signalWords(signal: Signal): string {
  return signal.marking === "" ? signal.name : `${signal.name} (${signal.marking})`;
}

const verdictMarks = { passed: "flush", failed: "stepped", unchecked: "unchecked" } as const;

function PlaceLine({ place }: { readonly place: CheckedPlace }) {
  const { part, verdict, sentence, at } = place;
  return (
    <li className="place-line">
      <Mark
        kind={verdictMarks[verdict]}
        word={`${partNames[part]} ${verdict}.`}
        pencil={verdict === "failed"}
        strong
      />
      <span className="soft">
        {sentence} {at !== null && formatDayAndTime(at)}
      </span>
    </li>
  );
}
