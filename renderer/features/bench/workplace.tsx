import { useMemo, useRef, useState } from "react";
import type { Calculator } from "#shared-lib/calculators/calculator.ts";
import { formatDate, formatDayAndTime, formatLevel } from "#shared-lib/format.ts";
import { ErrorNote } from "../../ui/error-note.tsx";
import { useRead } from "../../use-read.ts";
import { BridgeStrips } from "../bridges/bridge-strips-panel.tsx";
import { BenchHead } from "./bench-head.tsx";
import { type BenchPlace, draftKey } from "./bench-place.ts";
import { CalculatorForm } from "./calculator-form.tsx";
import { Documentation } from "./documentation.tsx";
import { DrawingsOfResult, type EarlierDrawings } from "./drawing-of-result.tsx";
import { type EarlierTable, earlierTable } from "./earlier-results.ts";
import { EarlierView } from "./earlier-view.tsx";
import { HowSure } from "./how-sure.tsx";
import { concernsLanding, LiftDialog } from "./lift-dialog.tsx";
import { RecordSheet } from "./record-sheet.tsx";
import { type BenchForm, useBenchForm } from "./use-bench-form.ts";
import { type Carried, useCarried } from "./use-carried.ts";
import { usePrinting } from "./use-printing.ts";
import { type SaveResult, useSaveResult } from "./use-save-result.ts";
import { useUnitSystem } from "./use-unit-system.ts";
import { ComputedValues, VerdictView } from "./verdict-view.tsx";

interface WorkplaceProps {
  readonly calculator: Calculator;
  readonly place: BenchPlace;
  readonly carried: Carried | null;
  readonly onPlace: (place: BenchPlace, carried: Carried | null) => void;
}

/** One calculator at one lift and landing. */
export function Workplace({ calculator, place, carried, onPlace }: WorkplaceProps) {
  const [system, toggleUnits] = useUnitSystem();
  const form = useBenchForm(calculator, place, system);
  const [asksLift, setAsksLift] = useState(false);
  const formRef = useRef<HTMLFormElement>(null);
  const saving = useSaveResult({ calculator, place, form, formRef, onNoLift: () => setAsksLift(true) });
  useCarried(form, carried, saving.write.savedAt !== undefined);
  const printing = usePrinting();
  const earlier = useEarlier(calculator, place, form, system);
  const words = placeWords(form, place);
  const choose = (next: BenchPlace): void => {
    setAsksLift(false);
    const carries = place.lift === null && Object.keys(form.entries).length > 0;
    onPlace(next, carries ? { entries: form.entries, key: draftKey(calculator.id, place) } : null);
  };
  const drawn = { system, levelWords: words.level, earlier: earlier.drawn };
  return (
    <>
      <div className="bench-page" hidden={printing}>
        {place.lift !== null && <BridgeStrips liftId={place.lift} />}
        <BenchHead
          {...{ calculator, form, saving, system }}
          landingWords={words.landing}
          onUnits={toggleUnits}
          onOtherLift={() => setAsksLift(true)}
        />
        <WhatWentWrong {...{ calculator, form, saving }} />
        {form.ready ? (
          <div className="bench">
            <CalculatorForm {...{ calculator, form, system, saving, formRef }} />
            <div className="bench-out">
              <VerdictView result={form.result} />
              <ComputedValues result={form.result} />
              <DrawingsOfResult drawings={form.result.drawings} {...drawn} fileName={calculator.id} />
              <EarlierHere {...{ calculator, place, earlier }} landingOf={words.landingOf} />
            </div>
          </div>
        ) : (
          <p className="soft">Filling in from the lift</p>
        )}
        {form.ready && (
          <HowSure key={draftKey(calculator.id, place)} {...{ calculator, place, form, system }} />
        )}
        <Documentation calculator={calculator} system={system} />
      </div>
      {printing && (
        <RecordSheet
          {...{ calculator, form, ...drawn }}
          landingWords={words.landing}
          savedWords={earlier.savedWords}
        />
      )}
      {asksLift && (
        <LiftDialog
          {...{ calculator, place }}
          liftTitle={form.lift?.line.title ?? ""}
          onClose={() => setAsksLift(false)}
          onChoose={choose}
        />
      )}
    </>
  );
}

interface EarlierHereProps extends Pick<WorkplaceProps, "calculator" | "place"> {
  readonly earlier: EarlierState;
  readonly landingOf: (id: string | null) => string;
}

function EarlierHere({ calculator, place, earlier, landingOf }: EarlierHereProps) {
  if (earlier.table.rows.length === 0) return null;
  const ofAllLandings = place.landing === null && concernsLanding(calculator);
  return (
    <EarlierView
      title={place.landing === null ? "Earlier on this lift" : "Earlier at this landing"}
      table={earlier.table}
      drawnId={earlier.drawnId}
      onDraw={earlier.draw}
      landingOf={ofAllLandings ? landingOf : undefined}
    />
  );
}

interface WhatWentWrongProps extends Pick<WorkplaceProps, "calculator"> {
  readonly form: BenchForm;
  readonly saving: SaveResult;
}

function WhatWentWrong({ calculator, form, saving }: WhatWentWrongProps) {
  return (
    <>
      {form.errors.map((error) => (
        <ErrorNote key={error.message} error={error} />
      ))}
      <ErrorNote error={saving.write.error} fieldWords={(path) => labelAt(calculator, path)} />
      <ErrorNote error={form.draft.error} />
    </>
  );
}

function labelAt(calculator: Calculator, path: string): string | undefined {
  return calculator.inputs.find((field) => path === `inputs.${field.key}`)?.label;
}

function placeWords(form: BenchForm, place: BenchPlace) {
  const landings = form.lift?.landings ?? [];
  const landing = landings.find((one) => one.id === place.landing);
  return {
    landing: landing === undefined ? "" : `, landing ${landing.marking}`,
    level: landing === undefined ? "level" : `level ${landing.marking}, ${formatLevel(landing.level)}\u00a0m`,
    landingOf: (id: string | null): string => landings.find((one) => one.id === id)?.marking ?? "none",
  };
}

interface EarlierState {
  readonly table: EarlierTable;
  readonly drawnId: string | null;
  readonly draw: (id: string | null) => void;
  readonly drawn: EarlierDrawings | undefined;
  /** What the record says of the result on the screen. */
  readonly savedWords: string;
}

/** Saved results at this place; the newest that differs from the screen is drawn, until another is chosen. */
function useEarlier(
  calculator: Calculator,
  place: BenchPlace,
  form: BenchForm,
  system: Parameters<typeof earlierTable>[2],
): EarlierState {
  const [chosen, setChosen] = useState<string | null>();
  const saved = useRead(
    "calculation.list",
    {
      liftId: place.lift ?? "",
      calculatorId: calculator.id,
      ...(place.landing === null ? {} : { landingId: place.landing }),
    },
    { enabled: place.lift !== null, entities: ["calculation"] },
  );
  const table = useMemo(
    () => earlierTable(saved.value?.calculations ?? [], form.result, system),
    [saved.value, form.result, system],
  );
  const newest = table.rows.find((row) => !row.same && place.landing === row.landingId)?.id ?? null;
  const drawnId = chosen === undefined ? newest : chosen;
  const same = table.rows.find((one) => one.same);
  const row = table.rows.find((one) => one.id === drawnId && !one.same);
  return {
    table,
    drawnId: row?.id ?? null,
    draw: setChosen,
    savedWords: same === undefined ? "not saved" : `saved ${formatDayAndTime(same.at)}, ${same.by}`,
    drawn: row === undefined ? undefined : { drawings: row.result.drawings, words: formatDate(row.at) },
  };
}
