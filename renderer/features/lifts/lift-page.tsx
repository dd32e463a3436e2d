import { useState } from "react";
import type { OutputOf } from "#shared-lib/contract/operations.ts";
import { EmptyState } from "../../ui/empty-state.tsx";
import { ErrorNote } from "../../ui/error-note.tsx";
import { PageTitle } from "../../ui/page-title.tsx";
import { RuledTitle } from "../../ui/ruled-title.tsx";
import { useRead } from "../../use-read.ts";
import { BridgeRegister } from "../bridges/bridge-register-panel.tsx";
import { BridgeStrips } from "../bridges/bridge-strips-panel.tsx";
import { RecordDangerDialog } from "../bridges/danger-dialogs-panel.tsx";
import { SetBridgeDialog } from "../bridges/set-bridge-dialog-panel.tsx";
import { SaveList } from "../export/save-list-panel.tsx";
import { LandingsEditor } from "./landings-editor.tsx";
import type { LiftDialog } from "./lift-actions.ts";
import { liftFields } from "./lift-fields.ts";
import { LiftActs, LiftHeader } from "./lift-header.tsx";
import { LiftPicture } from "./lift-picture.tsx";
import { LiftRecord } from "./lift-record.tsx";
import { LiftResults } from "./lift-results.tsx";
import { LiftStateDialog } from "./lift-state-dialog.tsx";
import { LiftTimeline } from "./lift-timeline.tsx";
import { LiftVisits } from "./lift-visits.tsx";
import { RecordHistory } from "./record-history.tsx";
import { SignalsTable } from "./signals-table.tsx";
import { VisitDialog } from "./visit-dialog.tsx";
import "./lifts.css";

type Found = OutputOf<"lift.find">;

const stateFieldWords = {
  state: "State",
  stateReason: "Reason of the state",
  stateSince: "State since",
  stateBy: "State by",
} as const;

export function LiftPage({ id }: { readonly id: string }) {
  const read = useRead("lift.find", { id });
  if (read.value === undefined) {
    return (
      <>
        <PageTitle title="Lift" />
        <ErrorNote error={read.error} onRetry={read.reload} />
        {read.error?.code === "not-found" && <LiftHistory id={id} />}
      </>
    );
  }
  return <FoundLift found={read.value} />;
}

function FoundLift({ found }: { readonly found: Found }) {
  const { lift, line, site, landings, signals } = found;
  const [asked, setAsked] = useState<LiftDialog | null>(null);
  const calculations = useRead("calculation.list", { liftId: lift.id, limit: 100 });
  const visits = useRead("visit.list", { liftId: lift.id });
  const results = calculations.value?.calculations ?? [];
  const close = () => setAsked(null);
  return (
    <div className="lift-page">
      <LiftHeader lift={lift} line={line} site={site} />
      <BridgeStrips liftId={lift.id} />
      <LiftActs liftId={lift.id} onAsk={setAsked} />
      <LiftPicture
        found={found}
        calculations={results}
        below={
          <>
            <LiftRecord lift={lift} site={site} />
            <section id="landings">
              <RuledTitle count={landings.length}>Landings</RuledTitle>
              <LandingsEditor liftId={lift.id} version={lift.version} landings={landings} />
            </section>
          </>
        }
        beside={<LiftTimeline liftId={lift.id} />}
      />
      <section>
        <RuledTitle
          count={signals.length}
          aside={signals.length > 0 && <SaveList list="signals" input={{ id: lift.id }} />}
        >
          Signals
        </RuledTitle>
        <SignalsTable liftId={lift.id} landings={landings} signals={signals} />
      </section>
      <LiftBridges liftId={lift.id} />
      <section>
        <RuledTitle
          count={visits.value?.visits.length ?? 0}
          aside={(visits.value?.visits.length ?? 0) > 0 && <VisitSaves liftId={lift.id} />}
        >
          Visits
        </RuledTitle>
        <ErrorNote error={visits.error} onRetry={visits.reload} />
        <LiftVisits visits={visits.value?.visits ?? []} onRecord={() => setAsked("visit")} />
      </section>
      <section>
        <RuledTitle count={results.length}>Saved results</RuledTitle>
        <ErrorNote error={calculations.error} onRetry={calculations.reload} />
        <LiftResults liftId={lift.id} calculations={results} landings={landings} />
      </section>
      <section>
        <RuledTitle>History</RuledTitle>
        <LiftHistory id={lift.id} />
      </section>
      <LiftStateDialog lift={lift} open={asked === "state"} onClose={close} />
      <VisitDialog liftId={lift.id} open={asked === "visit"} onClose={close} />
      <SetBridgeDialog
        liftId={lift.id}
        landings={landings}
        open={asked === "bridge"}
        onClose={close}
        onDanger={() => setAsked("danger")}
      />
      <RecordDangerDialog liftId={lift.id} open={asked === "danger"} onClose={close} />
    </div>
  );
}

function VisitSaves({ liftId }: { readonly liftId: string }) {
  return (
    <span className="row">
      <SaveList list="visits" input={{ liftId }} />
      <span className="label">Parts</span>
      <SaveList list="parts" input={{ liftId }} what="Parts recorded on visits" />
    </span>
  );
}

function LiftHistory({ id }: { readonly id: string }) {
  return (
    <RecordHistory
      entity="lift"
      id={id}
      fields={liftFields}
      moreWords={stateFieldWords}
      deleteWords="Delete this lift"
    />
  );
}

function LiftBridges({ liftId }: { readonly liftId: string }) {
  const register = useRead("bridge.list", { liftId }, { entities: ["bridge", "danger"] });
  const bridges = register.value?.bridges ?? [];
  return (
    <section>
      <RuledTitle
        count={bridges.length}
        aside={bridges.length > 0 && <SaveList list="bridges" input={{ liftId }} />}
      >
        Bridge register
      </RuledTitle>
      <ErrorNote error={register.error} onRetry={register.reload} />
      {register.value === undefined ? (
        <EmptyState>Reading the register</EmptyState>
      ) : (
        <BridgeRegister bridges={bridges} dangers={register.value.dangers} />
      )}
    </section>
  );
}
