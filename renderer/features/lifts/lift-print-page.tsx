import { type ReactNode, useMemo } from "react";
import type { OutputOf } from "#shared-lib/contract/operations.ts";
import { landingsByLevel } from "#shared-lib/drawings/shaft-section.ts";
import { formatDate, formatDayAndTime } from "#shared-lib/format.ts";
import { printPage } from "../../shell-client.ts";
import { Button } from "../../ui/button.tsx";
import { Caution } from "../../ui/caution.tsx";
import { ShaftSection } from "../../ui/drawings/shaft-section.tsx";
import { ErrorNote } from "../../ui/error-note.tsx";
import { LiftState } from "../../ui/lift-state.tsx";
import { PageTitle } from "../../ui/page-title.tsx";
import { PrintSheet } from "../../ui/print-sheet.tsx";
import { RuledTitle } from "../../ui/ruled-title.tsx";
import { Table } from "../../ui/table.tsx";
import { Timeline } from "../../ui/timeline.tsx";
import { useProgram } from "../../use-program.ts";
import { useRead } from "../../use-read.ts";
import { openStripsOf } from "../bridges/bridge-parts.ts";
import { BridgeRegister } from "../bridges/bridge-register-panel.tsx";
import { LandingsTable } from "./landings-editor.tsx";
import { concernsOf, landingStatesOf, marksOf, sectionLiftOf } from "./lift-drawing.ts";
import { liftFields, siteFields } from "./lift-fields.ts";
import { timelineItem } from "./lift-timeline.tsx";
import { liftFactsLine, stateWords } from "./lift-words.ts";
import { RecordFacts } from "./record-facts.tsx";
import { signalColumns } from "./signals-table.tsx";
import { useOpenCallouts } from "./use-open-callouts.ts";
import "./lifts.css";

type Found = OutputOf<"lift.find">;

/** "Take this lift with me": all that is known, to be printed or kept as one file. */
export function LiftPrintPage({ id }: { readonly id: string }) {
  const found = useRead("lift.find", { id });
  const register = useRead("bridge.list", { liftId: id });
  const states = useRead("check.landingStates", { liftId: id });
  const timeline = useRead("lift.timeline", { id, limit: 20 });
  const calculations = useRead("calculation.list", { liftId: id, limit: 100 });
  const reads = [found, register, states, timeline, calculations];
  const error = reads.find((read) => read.error !== undefined)?.error;
  const known =
    found.value && register.value && states.value && timeline.value && calculations.value
      ? {
          found: found.value,
          register: register.value,
          places: states.value.places,
          entries: timeline.value.entries,
          calculations: calculations.value.calculations,
        }
      : null;
  const title = found.value === undefined ? "Lift" : `${found.value.line.title}, all that is known`;
  return (
    <>
      <div className="print-bar">
        <Button kind="first" onPress={() => void printPage()} disabled={known === null}>
          Print, or keep as a file
        </Button>
        <a className="button" href={`#/lift/${id}`}>
          <span className="button-word">Back to the lift</span>
        </a>
      </div>
      <div className="seen-by-reader-only">
        <PageTitle title={title} />
      </div>
      <ErrorNote error={error} />
      {known !== null && <LiftSheets {...known} />}
    </>
  );
}

interface KnownProps {
  readonly found: Found;
  readonly register: OutputOf<"bridge.list">;
  readonly places: OutputOf<"check.landingStates">["places"];
  readonly entries: OutputOf<"lift.timeline">["entries"];
  readonly calculations: OutputOf<"calculation.list">["calculations"];
}

/** Rows that fit on one A4 sheet beside their heads. */
const landingsOnSheet = 30;
const signalsOnSheet = 26;
const bridgesOnSheet = 8;
const entriesOnSheet = 14;

/** At least one part, so that a sheet says that nothing is entered. */
function partsOf<Item>(items: readonly Item[], size: number): readonly (readonly Item[])[] {
  const parts: (readonly Item[])[] = [];
  for (let from = 0; from < items.length; from += size) parts.push(items.slice(from, from + size));
  return parts.length === 0 ? [[]] : parts;
}

function LiftSheets(props: KnownProps) {
  const { found, register, entries } = props;
  const landings = [...found.landings].sort((one, other) => other.level - one.level);
  const sheets: readonly ReactNode[] = [
    <FirstSheet key="first" {...props} />,
    <RecordSheet key="record" found={found} />,
    ...partsOf(landings, landingsOnSheet).map((part, i) => (
      <TitledSheet key={`landings ${part[0]?.id ?? ""}`} title="Landings" more={i > 0}>
        {part.length === 0 ? <p>No landing is entered.</p> : <LandingsTable landings={part} />}
      </TitledSheet>
    )),
    ...partsOf(found.signals, signalsOnSheet).map((part, i) => (
      <TitledSheet key={`signals ${part[0]?.id ?? ""}`} title="Signals" more={i > 0}>
        <Table
          label="Signals"
          columns={signalColumns(found.landings)}
          rows={part}
          rowKey={(signal) => signal.id}
          empty={<p>No signal is entered.</p>}
        />
      </TitledSheet>
    )),
    ...partsOf(register.bridges, bridgesOnSheet).map((part, i) => (
      <TitledSheet key={`bridges ${part[0]?.id ?? ""}`} title="Bridge register" more={i > 0}>
        <BridgeRegister bridges={part} dangers={i === 0 ? register.dangers : []} />
      </TitledSheet>
    )),
    ...partsOf(entries, entriesOnSheet).map((part, i) => (
      <TitledSheet
        key={`timeline ${part[0]?.id ?? ""}`}
        title={`Timeline, the last ${entries.length} entries`}
        more={i > 0}
      >
        <Timeline label="Timeline of the lift" items={part.map(timelineItem)} />
      </TitledSheet>
    )),
  ];
  const count = sheets.length + 1;
  return (
    <>
      {sheets.map((sheet, i) => (
        // biome-ignore lint/suspicious/noArrayIndexKey: a sheet is its place among the sheets.
        <Sheet key={i} found={found} page={`${i + 1} of ${count}`}>
          {sheet}
        </Sheet>
      ))}
      <ShaftSheet {...props} page={`${count} of ${count}`} />
    </>
  );
}

interface TitledSheetProps {
  readonly title: string;
  /** Goes on from the sheet before. */
  readonly more: boolean;
  readonly children: ReactNode;
}

function TitledSheet({ title, more, children }: TitledSheetProps) {
  return (
    <>
      <RuledTitle>{more ? `${title}, going on` : title}</RuledTitle>
      {children}
    </>
  );
}

function FirstSheet(props: KnownProps) {
  const { lift, line, site } = props.found;
  return (
    <>
      <h2>{line.title}</h2>
      <p>{liftFactsLine(lift, line)}</p>
      <p className="row">
        <LiftState lift={line} short /> <span>{stateWords(lift, new Date())}</span>
      </p>
      <OpenThings {...props} />
      <Caution>
        Compare this sheet with the shaft: it tells what was recorded by {formatDayAndTime(new Date())}. Only
        trained people; lock off before you touch; no bridge stays in. Local codes and the maker’s
        instructions decide.
      </Caution>
      <RuledTitle>Access to {site.name}</RuledTitle>
      <RecordFacts fields={siteFields} values={site} />
    </>
  );
}

function RecordSheet({ found }: { readonly found: Found }) {
  return (
    <>
      <RuledTitle>Recorded about this lift</RuledTitle>
      <RecordFacts fields={liftFields} values={found.lift} />
    </>
  );
}

interface SheetProps {
  readonly found: Found;
  readonly page: string;
  readonly children: ReactNode;
}

function Sheet({ found, page, children }: SheetProps) {
  const { device, person } = useProgram();
  return (
    <PrintSheet
      title="All that is known about this lift"
      company={device.company?.name ?? ""}
      site={found.site.name}
      lift={found.lift.name}
      date={formatDate(new Date())}
      who={person?.name ?? ""}
      page={page}
    >
      <div className="print-stack">{children}</div>
    </PrintSheet>
  );
}

function useConcerns({ found, register, places }: KnownProps) {
  const callouts = useOpenCallouts(found.lift.id);
  return useMemo(
    () =>
      concernsOf({
        landings: found.landings,
        strips: openStripsOf(register),
        places,
        callouts: callouts.placed,
      }),
    [found.landings, register, places, callouts.placed],
  );
}

function OpenThings(props: KnownProps) {
  const concerns = useConcerns(props);
  if (concerns.length === 0) return <p>Nothing is open on this lift.</p>;
  return (
    <section>
      <RuledTitle count={concerns.length}>Open on this lift</RuledTitle>
      <ol>
        {concerns.map((concern) => (
          <li key={concern.id}>
            <b>{concern.number}</b> {concern.words}
          </li>
        ))}
      </ol>
    </section>
  );
}

/** The drawing brings its own frame and title block, with the scale it chose. */
function ShaftSheet(props: KnownProps & { readonly page: string }) {
  const { found, places, calculations } = props;
  const { lift, line, site, landings, signals } = found;
  const { device, person } = useProgram();
  const concerns = useConcerns(props);
  const section = sectionLiftOf({ lift, landings, signals, calculations });
  return (
    <div className="print-shaft">
      <ShaftSection
        lift={section}
        marks={marksOf(concerns)}
        landingStates={landingStatesOf(landings, places)}
        carLevelMetres={landingsByLevel(section)[0]?.levelMetres ?? 0}
        print={{
          company: device.company?.name ?? "",
          site: site.name,
          lift: line.name,
          date: formatDate(new Date()),
          person: person?.name ?? "",
          page: props.page,
        }}
      />
    </div>
  );
}
