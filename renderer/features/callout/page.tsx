import { useNavigate, useSearch } from "@tanstack/react-router";
import { useState } from "react";
import "./callout.css";
import type { OutputOf } from "#shared-lib/contract/operations.ts";
import { ErrorNote } from "../../ui/error-note.tsx";
import { PageTitle } from "../../ui/page-title.tsx";
import { useCommand } from "../../use-command.ts";
import { useRead } from "../../use-read.ts";
import { CauseSection } from "../cause/causes-panel.tsx";
import { SimilarFaults } from "../cause/similar-faults-panel.tsx";
import { CalloutHead, type CalloutStep } from "./callout-head.tsx";
import { ChangeCalloutDialog } from "./change-callout-dialog.tsx";
import { EndCalloutDialog } from "./end-callout-dialog.tsx";
import { EventsSection } from "./events-section.tsx";
import { FixToNote } from "./fix-to-note.tsx";
import { HistoryDialog } from "./history-dialog.tsx";
import { LiftSection } from "./lift-section.tsx";
import { NextEventDialog } from "./next-event-dialog.tsx";
import { OpenBridges } from "./open-bridges.tsx";
import { ReopenDialog } from "./reopen-dialog.tsx";
import { SaidSection } from "./said-section.tsx";
import { VisitForm } from "./visit-form.tsx";
import { VisitsSection } from "./visits-section.tsx";

type Found = OutputOf<"callout.find">;

/** Everything about one callout. The address names the visit or the fix that is worked on, so that Back goes back. */
export function CalloutPage({ id }: { readonly id: string }) {
  const { value: found, error, reload } = useRead("callout.find", { id });
  const [step, setStep] = useState<CalloutStep | null>(null);
  if (found === undefined) {
    return (
      <>
        <PageTitle title="Callout" />
        <ErrorNote error={error} onRetry={reload} />
      </>
    );
  }
  return (
    <>
      {found.lift !== null && <OpenBridges liftId={found.lift.id} />}
      <CalloutHead found={found} onStep={setStep} />
      <ErrorNote error={error} onRetry={reload} />
      <CalloutBody found={found} onStep={setStep} />
      {step !== null && <StepAsked step={step} found={found} onStep={setStep} />}
    </>
  );
}

interface StepAskedProps {
  readonly step: CalloutStep;
  readonly found: Found;
  readonly onStep: (step: CalloutStep | null) => void;
}

function StepAsked({ step, found, onStep }: StepAskedProps) {
  const { callout, line } = found;
  const onClose = () => onStep(null);
  switch (step) {
    case "event":
    case "pass on":
      return (
        <NextEventDialog
          line={step === "pass on" ? { ...line, next: "passed on" } : line}
          onClose={onClose}
          onEnd={() => onStep("end")}
          onItsPage
        />
      );
    case "end":
      return <EndCalloutDialog id={callout.id} onClose={onClose} onItsPage />;
    case "change":
      return <ChangeCalloutDialog found={found} onClose={onClose} />;
    case "reopen":
      return <ReopenDialog callout={callout} onClose={onClose} />;
    case "history":
      return <HistoryDialog calloutId={callout.id} number={callout.number} onClose={onClose} />;
  }
}

interface CalloutBodyProps {
  readonly found: Found;
  readonly onStep: (step: CalloutStep) => void;
}

function CalloutBody({ found, onStep }: CalloutBodyProps) {
  const navigate = useNavigate();
  const search = useSearch({ strict: false }) as Readonly<Record<string, unknown>>;
  const { id } = found.callout;
  const liftId = found.callout.liftId;
  const go = (next: Readonly<Record<string, string>>) =>
    void navigate({ to: "/callout/$id", params: { id }, search: next });
  const canRecord = liftId !== null;
  useCommand({
    name: "Record a visit",
    keys: "V",
    group: "Callout",
    when: canRecord,
    run: () => go({ visit: "new" }),
  });
  const { said, endedAt } = found.callout;
  const causes = (
    <CauseSection about={{ calloutId: id }} liftId={liftId} text={said} pathOnly={endedAt !== null} />
  );
  if (typeof search.fix === "string")
    return <FixToNote key={search.fix} fixId={search.fix} onDone={() => go({})} />;
  if (typeof search.visit === "string" && liftId !== null) {
    return (
      <>
        <VisitEntry
          key={search.visit}
          found={found}
          liftId={liftId}
          visitId={search.visit}
          onClose={() => go({})}
          onSaved={(fixId) => go(fixId === null ? {} : { fix: fixId })}
        />
        {causes}
        <SimilarFaults text={said} liftId={liftId} calloutId={id} />
      </>
    );
  }
  return (
    <>
      <div className="callout-columns">
        <div className="stack">
          <SaidSection found={found} />
          <EventsSection events={found.events} withdrawn={found.withdrawn} />
        </div>
        <div className="stack">
          <LiftSection found={found} onSettle={() => onStep("change")} />
          <VisitsSection
            calloutId={id}
            canRecord={canRecord}
            onRecord={() => go({ visit: "new" })}
            onCorrect={(visitId) => go({ visit: visitId })}
            onFix={(fixId) => go({ fix: fixId })}
          />
        </div>
      </div>
      {causes}
    </>
  );
}

interface VisitEntryProps {
  readonly found: Found;
  readonly liftId: string;
  readonly visitId: string;
  readonly onClose: () => void;
  readonly onSaved: (fixId: string | null) => void;
}

function VisitEntry({ visitId, ...rest }: VisitEntryProps) {
  const isNew = visitId === "new";
  const read = useRead(
    "visit.find",
    { id: visitId },
    { enabled: !isNew, entities: ["visit", "recorded fix"] },
  );
  if (isNew) return <VisitForm {...rest} visit={null} />;
  if (read.value === undefined) return <ErrorNote error={read.error} onRetry={read.reload} />;
  return <VisitForm {...rest} visit={read.value.visit} />;
}
