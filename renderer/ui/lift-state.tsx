import type { LiftLine } from "#shared-lib/contract/lift.ts";
import { formatSince } from "#shared-lib/format.ts";
import { Mark, MarkShape } from "./mark.tsx";

export type LiftStateFacts = Pick<
  LiftLine,
  "state" | "stateReason" | "stateSince" | "openBridges" | "peopleInside" | "danger"
>;

interface LiftStateProps {
  readonly lift: LiftStateFacts;
  /** Only marks and words, without since and why: for a row of a list. */
  readonly short?: boolean;
}

/** The state of a lift, and what must be seen wherever the lift is seen: people inside, open bridges, a danger. */
export function LiftState({ lift, short = false }: LiftStateProps) {
  const { state, stateReason, stateSince, openBridges, peopleInside, danger } = lift;
  const since = stateSince === null ? "" : ` since ${formatSince(stateSince, new Date())}`;
  const why = stateReason === "" ? "" : `: ${stateReason}`;
  const more = short ? "" : state === "in service" ? since : `${since}${why}`;
  return (
    <span className="row lift-state">
      <span className="marked">
        <StateShape state={state} />
        <span>
          <span className="strong">{stateWords[state]}</span>
          {more !== "" && <span className="soft">{more}</span>}
        </span>
      </span>
      {peopleInside && <Mark kind="person inside" word="Person inside" pencil strong />}
      {openBridges > 0 && (
        <Mark
          kind="bridge"
          word={openBridges === 1 ? "Bridge open" : `${openBridges} bridges open`}
          pencil
          strong
        />
      )}
      {danger && <Mark kind="bridge" word="Car and landing door found bridged together" pencil strong />}
    </span>
  );
}

const stateWords: { readonly [State in LiftLine["state"]]: string } = {
  "in service": "In service",
  restricted: "Restricted",
  "out of service": "Out of service",
};

/** Restricted has a shape of its own: flush sills with a bar that stops short between them. */
function StateShape({ state }: { readonly state: LiftLine["state"] }) {
  if (state === "in service") return <MarkShape kind="flush" />;
  if (state === "out of service") return <MarkShape kind="stepped" />;
  return (
    <svg className="mark" viewBox="0 0 20 20" aria-hidden="true">
      <path d="M1 10H7M13 10H19" strokeWidth="3" />
      <path d="M10 3V17" strokeWidth="2.4" />
    </svg>
  );
}
