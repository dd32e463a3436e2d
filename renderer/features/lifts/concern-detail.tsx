import { Link } from "@tanstack/react-router";
import type { Calculation } from "#shared-lib/contract/calculation.ts";
import type { Landing, Lift } from "#shared-lib/contract/lift.ts";
import { formatDayAndTime } from "#shared-lib/format.ts";
import { buttonClass } from "../../ui/button.tsx";
import { Mark, MarkShape } from "../../ui/mark.tsx";
import { RuledTitle } from "../../ui/ruled-title.tsx";
import { bridgeAcross } from "../bridges/bridge-parts.ts";
import type { CheckedPlace, Concern } from "./lift-drawing.ts";
import { ZoneDetail } from "./zone-detail.tsx";

interface ConcernDetailProps {
  readonly lift: Lift;
  readonly landings: readonly Landing[];
  readonly calculations: readonly Calculation[];
  readonly places: readonly CheckedPlace[];
  readonly concern: Concern;
}

/** What stands behind a mark of the drawing, under the same number. */
export function ConcernDetail({ concern, ...rest }: ConcernDetailProps) {
  const { number, words, strip, checked, callout, landingId } = concern;
  const landing = rest.landings.find((one) => one.id === landingId) ?? null;
  return (
    <section aria-live="polite">
      <RuledTitle number={number}>{words}</RuledTitle>
      {strip !== null && <StripWords strip={strip} />}
      {callout !== null && (
        <p className="row">
          {callout.peopleInside && <Mark kind="person inside" pencil strong />}
          <Link to="/callout/$id" params={{ id: callout.id }} className={buttonClass("quiet")}>
            <span className="button-word">Open the callout</span>
          </Link>
        </p>
      )}
      {checked !== null && <CheckWords checked={checked} />}
      {landing !== null && (checked?.part === "zone-magnet" || callout?.group === zoneGroup) ? (
        <ZoneDetail {...rest} landing={landing} />
      ) : (
        <FaultNotesLink lift={rest.lift} words={checked?.sentence ?? callout?.said ?? null} />
      )}
    </section>
  );
}

const zoneGroup = "position and zone sensing";

function StripWords({ strip }: { readonly strip: NonNullable<Concern["strip"]> }) {
  if (strip.kind === "danger") {
    return (
      <p>
        Found {formatDayAndTime(strip.danger.foundAt)}, {strip.danger.foundBy.name}. Nobody goes on until it
        is cleared.
      </p>
    );
  }
  const { bridge } = strip;
  return (
    <p>
      Across {bridgeAcross(bridge)}, <span className="marking">{bridge.points}</span>. {bridge.reason}. Set{" "}
      {formatDayAndTime(bridge.setAt)}, {bridge.setBy.name}, under {bridge.control} control.
    </p>
  );
}

function CheckWords({ checked }: { readonly checked: CheckedPlace }) {
  return (
    <p>
      {checked.sentence}{" "}
      {checked.at !== null && <span className="soft">Checked {formatDayAndTime(checked.at)}.</span>}{" "}
      {checked.checkId !== null && (
        <Link to="/checks/$id" params={{ id: checked.checkId }}>
          The check
        </Link>
      )}
    </p>
  );
}

export function FaultNotesLink({ lift, words }: { readonly lift: Lift; readonly words: string | null }) {
  if (words === null) return null;
  return (
    <Link to="/find" search={{ q: words, lift: lift.id }} className={buttonClass("quiet")}>
      <MarkShape kind="note confirmed" />
      <span className="button-word">Fault notes</span>
    </Link>
  );
}
