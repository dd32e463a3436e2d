import { Link } from "@tanstack/react-router";
import type { Visit } from "#shared-lib/contract/visit.ts";
import { formatDayAndTime } from "#shared-lib/format.ts";
import { Button, buttonClass } from "../../ui/button.tsx";
import { ErrorNote } from "../../ui/error-note.tsx";
import { PageTitle } from "../../ui/page-title.tsx";
import { RuledTitle } from "../../ui/ruled-title.tsx";
import { SavedState } from "../../ui/saved-state.tsx";
import { useDraft } from "../../use-draft.ts";
import { useRead } from "../../use-read.ts";
import { useWrite } from "../../use-write.ts";
import { BridgeStrips } from "../bridges/bridge-strips-panel.tsx";
import { fieldProblemOf } from "../bridges/entry-parts.ts";
import { CauseSection } from "../cause/causes-panel.tsx";
import { RecordHistory } from "./record-history.tsx";
import { draftOfVisit, readVisit, type VisitDraft } from "./visit-draft.ts";
import { VisitFields } from "./visit-fields.tsx";
import "./lifts.css";

export function VisitPage({ id }: { readonly id: string }) {
  const read = useRead("visit.find", { id });
  const visit = read.value?.visit;
  if (visit === undefined) {
    return (
      <>
        <PageTitle title="Visit" />
        <ErrorNote error={read.error} onRetry={read.reload} />
        {read.error?.code === "not-found" && <VisitHistory id={id} />}
      </>
    );
  }
  return (
    <div className="stack">
      <BridgeStrips liftId={visit.liftId} />
      <header className="lift-head">
        <div className="lift-head-words">
          <PageTitle title={`Visit, ${formatDayAndTime(visit.arrivedAt)}`} />
          <p>
            <Link to="/lift/$id" params={{ id: visit.liftId }}>
              {visit.liftTitle}
            </Link>
            , {visit.kind}, {visit.engineer.name}
          </p>
        </div>
        <div className="buttons">
          {visit.calloutId !== null && (
            <Link to="/callout/$id" params={{ id: visit.calloutId }} className={buttonClass("plain")}>
              <span className="button-word">Callout {visit.calloutNumber}</span>
            </Link>
          )}
          <Link to="/print/visit/$id" params={{ id }} className={buttonClass("plain")}>
            <span className="button-word">Print the visit sheet</span>
          </Link>
        </div>
      </header>
      <VisitBody visit={visit} />
      <CauseSection
        about={{ visitId: id }}
        liftId={visit.liftId}
        text={visit.found}
        pathOnly={visit.calloutId !== null || visit.fix !== null || visit.found.trim() === ""}
      />
      <section>
        <RuledTitle>History</RuledTitle>
        <VisitHistory id={id} />
      </section>
    </div>
  );
}

function VisitHistory({ id }: { readonly id: string }) {
  return (
    <RecordHistory
      entity="visit"
      id={id}
      fields={[]}
      moreWords={visitFieldWords}
      deleteWords="Delete this visit"
    />
  );
}

const visitFieldWords = {
  kind: "Kind",
  arrivedAt: "Arrived",
  leftAt: "Left",
  found: "Found",
  done: "Done",
  displayReading: "Read on a display",
  chargeable: "Chargeable",
  readings: "Readings",
} as const;

function VisitBody({ visit }: { readonly visit: Visit }) {
  const draft = useDraft<VisitDraft & { readonly open: boolean }>(`visit.change ${visit.id}`, {
    ...draftOfVisit(visit),
    open: false,
  });
  const write = useWrite("visit.change");
  const reading = readVisit(draft.value, new Date());
  const change = (part: Partial<VisitDraft>) => draft.set((before) => ({ ...before, ...part }));
  const save = async (version: number) => {
    change({ tried: true });
    if (reading.input === null) return;
    const { fix, ...fields } = reading.input;
    const result = await write.run({ id: visit.id, version, fields, fix: fix ?? null });
    if (result.ok) await draft.drop();
  };
  if (!draft.value.open) {
    return (
      <>
        <VisitWords visit={visit} />
        <div>
          <Button onPress={() => draft.set({ ...draftOfVisit(visit), open: true })}>Correct the visit</Button>
        </div>
      </>
    );
  }
  const isConflict = write.error?.code === "version-conflict";
  return (
    <div className="stack">
      <VisitFields
        value={draft.value}
        change={change}
        problem={(path) =>
          (draft.value.tried ? reading.problems[path] : undefined) ??
          fieldProblemOf(write.error, `fields.${path}`) ??
          fieldProblemOf(write.error, path)
        }
        ofCallout={visit.calloutId !== null}
      />
      <ErrorNote error={write.error} />
      {isConflict && (
        <section className="stack">
          <p className="strong">Saved meanwhile:</p>
          <VisitWords visit={visit} />
        </section>
      )}
      <div className="buttons">
        <Button
          kind="first"
          onPress={() => void save(isConflict ? visit.version : draft.value.version)}
          pending={write.pending}
        >
          {isConflict ? "Save yours as the newest" : "Save"}
        </Button>
        <Button onPress={() => void draft.drop()}>Give up what I typed</Button>
        <SavedState kind="not saved yet" keptAt={draft.keptAt} />
      </div>
    </div>
  );
}

/** Everything written about a visit, in words. */
function VisitWords({ visit }: { readonly visit: Visit }) {
  const charge = visit.chargeable === null ? "not settled" : visit.chargeable ? "yes" : "no";
  const facts: readonly (readonly [string, string])[] = [
    ["Arrived", formatDayAndTime(visit.arrivedAt)],
    ["Left", visit.leftAt === null ? "" : formatDayAndTime(visit.leftAt)],
    ["Found", visit.found],
    ["Done", visit.done],
    ["Cause", visit.fix?.cause ?? ""],
    ["What ended it", visit.fix?.fix ?? ""],
    ["Fault group", visit.fix?.group ?? ""],
    ["Parts", visit.parts.map((part) => `${part.quantity} × ${part.name} ${part.marking}`.trim()).join("; ")],
    ["Readings", visit.readings.join("; ")],
    ["Read on a display", visit.displayReading],
    ["Chargeable", charge],
  ];
  return (
    <dl className="fact-list">
      {facts
        .filter(([, words]) => words !== "")
        .map(([name, words]) => (
          <div key={name}>
            <dt>{name}</dt>
            <dd>{words}</dd>
          </div>
        ))}
    </dl>
  );
}
