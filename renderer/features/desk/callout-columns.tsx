import type { CalloutLine } from "#shared-lib/contract/callout.ts";
import { formatSince, formatStoredDay, formatWait } from "#shared-lib/format.ts";
import { ordinalWord } from "#shared-lib/ordinal-word.ts";
import { CalloutProgress } from "../../ui/callout-progress.tsx";
import { Mark, MarkShape } from "../../ui/mark.tsx";
import type { VirtualColumn } from "../../ui/virtual-table.tsx";
import { calloutState, peopleAreInside, peopleWords, progressOf } from "../callout/event-parts.ts";

/** The columns of the open callouts; the wait runs with `now`. */
export function openColumns(now: Date): readonly VirtualColumn<CalloutLine>[] {
  return [
    { id: "state", head: "State", width: "9rem", cell: (line) => <State line={line} /> },
    {
      id: "wait",
      head: "Waiting",
      width: "4.75rem",
      number: true,
      cell: (line) => <b>{formatWait(now.getTime() - Date.parse(line.receivedAt))}</b>,
    },
    { id: "lift", head: "Lift", width: "minmax(0, 1.5fr)", cell: (line) => <b>{line.liftTitle}</b> },
    { id: "said", head: "What was said", width: "minmax(0, 2.3fr)", cell: (line) => <Said line={line} /> },
    { id: "next", head: "Next", width: "13rem", cell: (line) => <CalloutProgress {...progressOf(line)} /> },
    { id: "with", head: "With", width: "7rem", cell: (line) => <With line={line} /> },
  ];
}

/** The columns of a list that also holds closed callouts. */
export function listColumns(now: Date): readonly VirtualColumn<CalloutLine>[] {
  return [
    { id: "number", head: "Number", width: "6rem", cell: (line) => line.number },
    {
      id: "received",
      head: "Received",
      width: "8.5rem",
      cell: (line) => formatSince(line.receivedAt, now),
    },
    { id: "lift", head: "Lift", width: "minmax(0, 1.3fr)", cell: (line) => <b>{line.liftTitle}</b> },
    { id: "said", head: "What was said", width: "minmax(0, 1.6fr)", cell: (line) => <Said line={line} /> },
    { id: "group", head: "Fault group", width: "minmax(0, 0.9fr)", cell: (line) => line.group },
    { id: "ended", head: "How it ended", width: "minmax(0, 1.6fr)", cell: (line) => <Ended line={line} /> },
  ];
}

function State({ line }: { readonly line: CalloutLine }) {
  const state = calloutState(line);
  return <Mark kind={state.mark} word={state.words} pencil={state.pencil} strong />;
}

function Said({ line }: { readonly line: CalloutLine }) {
  const isInside = line.endedAt === null && peopleAreInside(line);
  return (
    <>
      <span className="said">{line.said}</span>
      {isInside && (
        <span className="said-line">
          <b>{peopleWords(line.insideCount)} inside.</b>{" "}
          {line.callBack === "" ? (
            <b className="pencil">No call-back number</b>
          ) : (
            <>
              {/* A later caller reported them: the line holds the first caller's number only, and says so. */}
              {line.insideSince === null ? "Call back" : "First caller"} <b>{line.callBack}</b>
            </>
          )}
          <span className="wide-only-inline">
            {" "}
            · to come: <MarkShape kind="people released" /> people released, <MarkShape kind="closed" />{" "}
            closed
          </span>
        </span>
      )}
      {line.endedAt === null && line.inside === "not known" && (
        <span className="said-line pencil strong">Not known whether anyone is inside</span>
      )}
      {line.endedAt === null && <LiftTrouble line={line} />}
      {line.repeat > 0 && (
        <span className="said-line soft">
          <Mark kind="repeat" word={`${ordinalWord(line.repeat)} repeat: ${line.group}`} />
        </span>
      )}
      {line.callerCount > 1 && <span className="said-line soft">{line.callerCount} callers</span>}
    </>
  );
}

function LiftTrouble({ line }: { readonly line: CalloutLine }) {
  return (
    <>
      {line.danger && (
        <span className="said-line">
          <Mark kind="bridge" word="Car and landing door found bridged together: cleared first" pencil />
        </span>
      )}
      {line.openBridges.map((bridge) => (
        <span key={bridge.id} className="said-line pencil">
          <MarkShape kind="bridge" /> Bridge {bridge.number} open
          <span className="wide-only-inline">: cannot go back in service</span>
        </span>
      ))}
    </>
  );
}

function With({ line }: { readonly line: CalloutLine }) {
  if (line.engineer !== null) return <>{line.engineer.name}</>;
  return <span className="pencil strong">nobody yet</span>;
}

function Ended({ line }: { readonly line: CalloutLine }) {
  if (line.endedAt === null) return <State line={line} />;
  const words = line.fix || line.cause;
  const awaits = line.awaits === null ? "" : `, awaits ${line.awaits}`;
  return (
    <>
      {line.ending}
      {awaits}
      {line.returnVisitOn !== null && `, return visit ${formatStoredDay(line.returnVisitOn)}`}
      {words !== "" && <span className="said-line soft">{words}</span>}
    </>
  );
}
