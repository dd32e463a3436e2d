import {
  type Comparison,
  type Result,
  resultSchema,
  type ValueLine,
} from "#shared-lib/calculators/result.ts";
import type { Calculation } from "#shared-lib/contract/calculation.ts";
import { type UnitSystem, writeQuantity } from "#shared-lib/quantities.ts";

/** One number of a result: what was compared, and what was computed. */
type Figure = Pick<Comparison | ValueLine, "key" | "label" | "value" | "unit" | "digits" | "signed">;

export interface EarlierCell {
  readonly shown: string;
  /** What changed since then, "+3 mm"; empty where one of the two numbers is not there. */
  readonly change: string;
}

export interface EarlierRow {
  readonly id: string;
  readonly at: string;
  readonly by: string;
  readonly landingId: string | null;
  readonly word: string;
  readonly sentence: string;
  readonly holds: boolean | null;
  readonly cells: Readonly<Record<string, EarlierCell>>;
  readonly result: Result;
  /** Every number is the one on the screen: there is nothing to compare. */
  readonly same: boolean;
}

export interface EarlierTable {
  readonly columns: readonly { readonly key: string; readonly label: string }[];
  readonly rows: readonly EarlierRow[];
}

const mostColumns = 4;

/** Compared numbers first, because they decide; a number that is both stands once. */
function figuresOf(result: Result): readonly Figure[] {
  const seen = new Set<string>();
  return [...result.comparisons, ...result.values].filter((figure) => {
    if (figure.value === null || seen.has(figure.key)) return false;
    seen.add(figure.key);
    return true;
  });
}

function writeFigure(figure: Figure, value: number, system: UnitSystem, signed = figure.signed): string {
  return writeQuantity(value, figure.unit, { digits: figure.digits, signed, system });
}

function cellOf(figure: Figure, now: Figure | undefined, system: UnitSystem): EarlierCell {
  const value = figure.value ?? 0;
  const change =
    now === undefined || now.value === null || now.unit !== figure.unit
      ? ""
      : writeFigure(figure, now.value - value, system, true);
  return { shown: writeFigure(figure, value, system), change };
}

function sameFigures(figures: readonly Figure[], now: readonly Figure[]): boolean {
  return (
    figures.length === now.length &&
    figures.every((figure) => {
      const value = now.find((one) => one.key === figure.key)?.value;
      return value != null && Math.abs(value - (figure.value ?? 0)) <= 1e-9 * Math.max(1, Math.abs(value));
    })
  );
}

/**
 * Saved results beside the one on the screen, newest first, each number with what changed since. A result that a
 * later version can no longer read is left out of the table, never shown half.
 */
export function earlierTable(
  saved: readonly Calculation[],
  current: Result,
  system: UnitSystem,
): EarlierTable {
  const readable = saved.flatMap((calculation) => {
    const result = resultSchema.safeParse(calculation.result);
    return result.success ? [{ calculation, figures: figuresOf(result.data), result: result.data }] : [];
  });
  const now = figuresOf(current);
  const order = [...now, ...readable.flatMap(({ figures }) => figures)];
  const labels = new Map(order.map((figure) => [figure.key, figure.label]));
  const present = new Set(readable.flatMap(({ figures }) => figures.map((figure) => figure.key)));
  const keys = [...labels.keys()].filter((key) => present.has(key)).slice(0, mostColumns);
  return {
    columns: keys.map((key) => ({ key, label: (labels.get(key) ?? key).replace(/[,:]$/, "") })),
    rows: readable.map(({ calculation, figures, result }) => ({
      id: calculation.id,
      at: calculation.at,
      by: calculation.by.name,
      landingId: calculation.landingId,
      word: calculation.verdictWord,
      sentence: calculation.verdictSentence,
      holds: result.verdict.holds,
      cells: Object.fromEntries(
        figures
          .filter((figure) => keys.includes(figure.key))
          .map((figure) => [
            figure.key,
            cellOf(
              figure,
              now.find((one) => one.key === figure.key),
              system,
            ),
          ]),
      ),
      result,
      same: sameFigures(figures, now) && result.verdict.sentence === current.verdict.sentence,
    })),
  };
}
