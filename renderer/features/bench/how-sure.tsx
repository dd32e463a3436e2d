import { useDeferredValue, useMemo, useState } from "react";
import type { Calculator } from "#shared-lib/calculators/calculator.ts";
import type { NumberField as Field } from "#shared-lib/calculators/field.ts";
import { changesForPass, movesMost, type NeededChange } from "#shared-lib/calculators/sensitivity.ts";
import {
  numbersEntered,
  type Tolerances as PlusMinus,
  type Spread,
  uncertaintyOf,
} from "#shared-lib/calculators/uncertainty.ts";
import { readNumber } from "#shared-lib/number-words.ts";
import { toSi, type Unit, type UnitSystem, unitIn, units, writeQuantity } from "#shared-lib/quantities.ts";
import { Button } from "../../ui/button.tsx";
import { Choice } from "../../ui/choice.tsx";
import { NumberField } from "../../ui/number-field.tsx";
import { RuledTitle } from "../../ui/ruled-title.tsx";
import { type DraftState, useDraft } from "../../use-draft.ts";
import { type BenchPlace, draftKey } from "./bench-place.ts";
import { writtenNumber } from "./entries.ts";
import { unitSign } from "./unit-words.ts";
import type { BenchForm } from "./use-bench-form.ts";

type Way = "worst" | "squares";
interface Kept {
  readonly way: Way;
  /** By field key, as typed and the unit it was typed in. */
  readonly typed: Readonly<Record<string, { readonly text: string; readonly unit: Unit }>>;
}

const nothing: Kept = { way: "worst", typed: {} };
const ways = [
  { id: "worst", words: "worst case" },
  { id: "squares", words: "root-sum-square" },
] as const;
const meaning: Readonly<Record<Way, string>> = {
  worst: "Worst case: every value is off by its whole tolerance, each to the bad side.",
  squares:
    "Root-sum-square: the values are off independently, so they seldom all lie to the bad side. Not for values read with the same wrong instrument.",
};

function readKept(kept: unknown): Kept {
  if (typeof kept !== "object" || kept === null) return nothing;
  const { way, typed } = kept as Partial<Record<"way" | "typed", unknown>>;
  const entries = typeof typed === "object" && typed !== null ? Object.entries(typed) : [];
  const fit = entries.filter(([, one]) => {
    const { text, unit } = (one ?? {}) as { text?: unknown; unit?: unknown };
    return typeof text === "string" && typeof unit === "string" && unit in units;
  });
  return { way: way === "squares" ? "squares" : "worst", typed: Object.fromEntries(fit) };
}

/** SI; a tolerance that is no number above 0 counts as none. */
function tolerancesOf({ typed }: Kept): PlusMinus {
  const found: Record<string, number> = {};
  for (const [key, { text, unit }] of Object.entries(typed)) {
    const reading = readNumber(text);
    if (reading.kind === "number" && reading.number > 0) found[key] = toSi(reading.number, unit);
  }
  return found;
}

interface HowSureProps {
  readonly calculator: Calculator;
  readonly place: BenchPlace;
  readonly form: BenchForm;
  readonly system: UnitSystem;
}

/** What would have to change for a pass, and what tolerances of the values do to the result. */
export function HowSure({ calculator, place, form, system }: HowSureProps) {
  const input = useDeferredValue(form.input);
  const draft = useDraft<unknown>(`${draftKey(calculator.id, place)}/tolerances`, nothing);
  const hasTyped = Object.keys(readKept(draft.value).typed).length > 0;
  const [opened, setOpen] = useState<boolean>();
  const isOpen = opened ?? hasTyped;
  const changes = useMemo(() => changesForPass(calculator, input, system), [calculator, input, system]);
  const mover = useMemo(() => movesMost(calculator, input), [calculator, input]);
  if (form.result.values.length + form.result.comparisons.length === 0) return null;
  return (
    <section className="how-sure region" aria-label="How sure it is">
      <RuledTitle>How sure it is</RuledTitle>
      {changes.length > 0 && <Changes changes={changes} system={system} />}
      {mover !== null && (
        <p>{`Of the values entered, ${mover.field.label.toLowerCase()} moves the result most (each changed alone by one hundredth; looked at: ${mover.line.toLowerCase()}).`}</p>
      )}
      <Button kind="quiet" expanded={isOpen} onPress={() => setOpen(!isOpen)}>
        {isOpen ? "Fold the tolerances" : "Enter tolerances of the values"}
      </Button>
      {isOpen && <Tolerances {...{ calculator, form, system, draft }} />}
    </section>
  );
}

interface TolerancesProps extends Omit<HowSureProps, "place"> {
  readonly draft: DraftState<unknown>;
}

/** A plus-minus for every number entered, and how far the result may then lie. */
function Tolerances({ calculator, form, system, draft }: TolerancesProps) {
  const kept = readKept(draft.value);
  const numbers = numbersEntered(calculator, form.input).filter(({ field }) => field.whole !== true);
  return (
    <>
      <h3>Tolerances of what was entered</h3>
      <div className="how-sure-fields">
        {numbers.map(({ field }) => (
          <Tolerance
            key={field.key}
            field={field}
            system={system}
            kept={kept}
            onChange={(text, unit) =>
              draft.set((before: unknown) => {
                const { way, typed } = readKept(before);
                return { way, typed: { ...typed, [field.key]: { text, unit } } };
              })
            }
          />
        ))}
      </div>
      <Spreads
        {...{ calculator, form, system, kept }}
        onWay={(way) => draft.set((before: unknown) => ({ ...readKept(before), way }))}
      />
    </>
  );
}

interface ChangesProps {
  readonly changes: readonly NeededChange[];
  readonly system: UnitSystem;
}

function Changes({ changes, system }: ChangesProps) {
  const write = (field: Field, value: number): string => {
    const sign = unitSign(unitIn(system, field.unit));
    const text = writtenNumber(value, field, system);
    return sign === undefined ? text : `${text}\u00a0${sign}`;
  };
  return (
    <>
      <h3>What would have to change for a pass</h3>
      <p className="label soft">
        Each alone, nothing else changed; computed, and no advice to change a setting.
      </p>
      <ul className="how-sure-changes">
        {changes.map(({ field, from, to }) => (
          <li key={field.key}>
            {field.label}:{" "}
            {to === null
              ? `no value from ${write(field, field.range[0])} to ${write(field, field.range[1])} was found`
              : `from ${write(field, from)} to ${write(field, to)}`}
          </li>
        ))}
      </ul>
    </>
  );
}

interface ToleranceProps {
  readonly field: Field;
  readonly system: UnitSystem;
  readonly kept: Kept;
  readonly onChange: (text: string, unit: Unit) => void;
}

function Tolerance({ field, system, kept, onChange }: ToleranceProps) {
  const unit = unitIn(system, field.unit);
  const sign = unitSign(unit);
  const typed = kept.typed[field.key];
  const reading = typed === undefined ? null : readNumber(typed.text);
  const shown =
    typed === undefined || typed.unit === unit || reading?.kind !== "number"
      ? (typed?.text ?? "")
      : writtenNumber(toSi(reading.number, typed.unit), { ...field, plusMinus: false }, system);
  const isNegative = reading?.kind === "number" && reading.number < 0;
  return (
    <NumberField
      label={`± ${field.label}`}
      value={shown}
      problem={isNegative ? "A tolerance has no sign. It counts as none until you decide." : undefined}
      onChange={(text) => onChange(text, unit)}
      {...(sign === undefined ? {} : { unit: sign })}
    />
  );
}

interface SpreadsProps {
  readonly calculator: Calculator;
  readonly form: BenchForm;
  readonly system: UnitSystem;
  readonly kept: Kept;
  readonly onWay: (way: Way) => void;
}

const standing = (stands: boolean | null, word: string): string => {
  if (stands === null) return "Whether the verdict stands cannot be said at every end of the tolerances.";
  return stands
    ? `The verdict “${word}” stands within these tolerances.`
    : `The verdict “${word}” does not stand: within these tolerances it may be another.`;
};

function Spreads({ calculator, form, system, kept, onWay }: SpreadsProps) {
  const tolerances = tolerancesOf(kept);
  const key = JSON.stringify(tolerances);
  const found = useMemo(
    () => uncertaintyOf(calculator, form.input, JSON.parse(key) as PlusMinus, system),
    [calculator, form.input, key, system],
  );
  if (Object.keys(tolerances).length === 0) {
    return <p className="label soft">With a tolerance at a value it is told how far the result may lie.</p>;
  }
  const { result } = form;
  const stands = kept.way === "worst" ? found.standsInWorstCase : found.standsByRootSumSquare;
  const cut = calculator.inputs.filter((field) => found.cut.includes(field.key)).map(({ label }) => label);
  return (
    <>
      <Choice label="Shown as" options={ways} value={kept.way} onChange={onWay} />
      <p className="label soft">{meaning[kept.way]}</p>
      {result.verdict.holds !== null && <p className="strong">{standing(stands, result.verdict.word)}</p>}
      {cut.length > 0 && (
        <p className="label">{`Taken only to the end of the allowed range: ${cut.join(", ")}.`}</p>
      )}
      <dl className="bench-values" aria-label="Within the tolerances">
        {result.values.map((line) => (
          <SpreadLine
            key={line.key}
            line={line}
            spread={found.values.find((one) => one.key === line.key)}
            {...{ system, way: kept.way }}
          />
        ))}
      </dl>
    </>
  );
}

interface SpreadLineProps {
  readonly line: BenchForm["result"]["values"][number];
  readonly spread: Spread | undefined;
  readonly system: UnitSystem;
  readonly way: Way;
}

function SpreadLine({ line, spread, system, way }: SpreadLineProps) {
  const write = (value: number, signed = line.signed): string =>
    writeQuantity(value, line.unit, { digits: line.digits, signed, system });
  const words =
    spread === undefined
      ? `${line.shown}, spread not known`
      : spread.rootSumSquare === 0
        ? line.shown
        : way === "worst"
          ? `${write(spread.worst[0])} to ${write(spread.worst[1])}`
          : `${write(spread.value)} ± ${write(spread.rootSumSquare, false)}`;
  return (
    <div>
      <dt>{line.label}</dt>
      <dd>{words}</dd>
    </div>
  );
}
