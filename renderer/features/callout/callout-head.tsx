import { Link } from "@tanstack/react-router";
import type { OutputOf } from "#shared-lib/contract/operations.ts";
import { formatSince, formatStoredDay, formatWait } from "#shared-lib/format.ts";
import { ordinalWord } from "#shared-lib/ordinal-word.ts";
import { Button } from "../../ui/button.tsx";
import { CalloutProgress } from "../../ui/callout-progress.tsx";
import { Mark } from "../../ui/mark.tsx";
import { PageTitle } from "../../ui/page-title.tsx";
import { useCommand } from "../../use-command.ts";
import { useNow } from "../../use-now.ts";
import { calloutState, progressOf } from "./event-parts.ts";

export type CalloutStep = "event" | "pass on" | "end" | "change" | "reopen" | "history";

interface CalloutHeadProps {
  readonly found: OutputOf<"callout.find">;
  readonly onStep: (step: CalloutStep) => void;
}

/** Which callout it is, how it stands, and the next step by one key. */
export function CalloutHead({ found, onStep }: CalloutHeadProps) {
  const { callout, line } = found;
  return (
    <header className="stack callout-head">
      <div className="spread">
        <PageTitle title={`${callout.number} · ${line.liftTitle}`} />
        <Standing found={found} />
      </div>
      <Ended found={found} />
      <div className="buttons">
        {callout.endedAt === null ? (
          <OpenSteps line={line} onStep={onStep} />
        ) : (
          <Button kind="first" onPress={() => onStep("reopen")}>
            Open it again
          </Button>
        )}
        <StepButton keys="E" onPress={() => onStep("change")}>
          Correct what was written
        </StepButton>
        <Link to="/print/callout/$id" params={{ id: callout.id }}>
          Callout slip
        </Link>
        <Button kind="quiet" onPress={() => onStep("history")}>
          History
        </Button>
      </div>
    </header>
  );
}

interface OpenStepsProps {
  readonly line: OutputOf<"callout.find">["line"];
  readonly onStep: (step: CalloutStep) => void;
}

function OpenSteps({ line, onStep }: OpenStepsProps) {
  const isLast = line.next === "closed";
  const next = line.next === null || isLast ? "End the callout" : `Record ${line.next}`;
  useCommand({ name: next, keys: "N", group: "Callout", run: () => onStep(isLast ? "end" : "event") });
  return (
    <>
      <Button kind="first" keys="N" onPress={() => onStep(isLast ? "end" : "event")}>
        {next}
      </Button>
      <StepButton keys="H" onPress={() => onStep("pass on")}>
        {line.engineer === null ? "Pass on" : "Hand over"}
      </StepButton>
      {!isLast && (
        <StepButton keys="X" onPress={() => onStep("end")}>
          End the callout
        </StepButton>
      )}
    </>
  );
}

interface StepButtonProps {
  readonly keys: string;
  readonly onPress: () => void;
  readonly children: string;
}

function StepButton({ keys, onPress, children }: StepButtonProps) {
  useCommand({ name: children, keys, group: "Callout", run: onPress });
  return (
    <Button keys={keys} onPress={onPress}>
      {children}
    </Button>
  );
}

function Standing({ found }: { readonly found: OutputOf<"callout.find"> }) {
  const now = useNow();
  const { line } = found;
  const state = calloutState(line);
  return (
    <span className="row callout-standing">
      <Mark kind={state.mark} word={state.words} pencil={state.pencil} strong />
      {line.endedAt === null && (
        <>
          <span>
            waiting <b>{formatWait(now.getTime() - Date.parse(line.receivedAt))}</b>
          </span>
          <CalloutProgress {...progressOf(line)} />
          <span>
            with {line.engineer === null ? <b className="pencil">nobody yet</b> : <b>{line.engineer.name}</b>}
          </span>
        </>
      )}
      {line.repeat > 0 && <Mark kind="repeat" word={`${ordinalWord(line.repeat)} repeat: ${line.group}`} />}
    </span>
  );
}

function Ended({ found }: { readonly found: OutputOf<"callout.find"> }) {
  const { callout } = found;
  if (callout.endedAt === null || callout.ending === null) return null;
  const reason = callout.endingReason === "" ? "" : `: ${callout.endingReason}`;
  return (
    <p>
      Ended <b>{formatSince(callout.endedAt, new Date())}</b>: <b>{callout.ending}</b>
      {reason}.{callout.awaits !== null && ` Awaits ${callout.awaits}.`}
      {callout.returnVisitOn !== null && ` Return visit on ${formatStoredDay(callout.returnVisitOn)}.`}
    </p>
  );
}
