import { balanceFields } from "./balance-fields.ts";
import {
  type BalanceValues,
  doubtsOf,
  type Finding,
  findBalance,
  type Lines,
  loadsOf,
} from "./balance-finding.ts";
import {
  balanceFormulas,
  emptySource,
  intervalSource,
  methodSource,
  statedSource,
} from "./balance-formulas.ts";
import { onLine, type Reading } from "./balance-physics.ts";
import { defineCalculator, type Outcome } from "./calculator.ts";
import type { Drawing } from "./drawing.ts";
import type { Pen } from "./pen.ts";
import type { Comparison, ValueLine, Verdict } from "./result.ts";
import { whoDecides } from "./source.ts";

interface Bounds {
  readonly least: number;
  readonly most: number;
}

const boundsOf = ({ stated, tolerance }: BalanceValues): Bounds | null =>
  stated === undefined ? null : { least: stated - (tolerance ?? 0.02), most: stated + (tolerance ?? 0.02) };

/** Why readings that scatter leave it open: the interval reaches over a bound. Empty where they do not. */
function openBy({ interval }: Finding, { least, most }: Bounds, pen: Pen): string {
  if (interval === null) return "";
  const inside = interval.from >= least && interval.to <= most;
  const apart = interval.to < least || interval.from > most;
  if (inside || apart) return "";
  const share = (value: number): string => pen.write(value, "%", 1);
  return `between ${share(interval.from)} and ${share(interval.to)} by these readings, allowed are ${share(least)} to ${share(most)}.`;
}

function compare(values: BalanceValues, finding: Finding, pen: Pen): Comparison[] {
  const bounds = boundsOf(values);
  if (finding.balance === null || bounds === null) return [];
  const open = openBy(finding, bounds, pen);
  return [
    pen.compare({
      key: "balance",
      label: "Balanced share of the rated load",
      value: finding.balance,
      unit: "%",
      digits: 1,
      ...bounds,
      limitWords: `${pen.write(bounds.least, "%", 1)} to ${pen.write(bounds.most, "%", 1)}, as stated`,
      source: statedSource,
      field: "stated",
      ...(open === "" ? {} : { open }),
    }),
  ];
}

function foundWords({ balance, interval }: Finding, pen: Pen): string {
  const found = `The counterweight balances ${pen.write(balance ?? 0, "%", 1)} of the rated load`;
  if (interval === null) return `${found}.`;
  return `${found}, between ${pen.write(interval.from, "%", 1)} and ${pen.write(interval.to, "%", 1)} with 95 % confidence.`;
}

function verdictOf(
  values: BalanceValues,
  finding: Finding,
  comparisons: readonly Comparison[],
  pen: Pen,
): Verdict {
  const { balance, reason } = finding;
  const open = { word: "Not enough", holds: null, until: whoDecides } as const;
  if (balance === null) {
    return {
      ...open,
      sentence: reason,
      because: "",
      next: "Read up and down again at each load, always with car and counterweight level with each other.",
    };
  }
  const sentence = foundWords(finding, pen);
  const compared = comparisons[0];
  if (compared === undefined) {
    return {
      ...open,
      sentence,
      because: "The stated balance is not entered.",
      next: "Compare it with the lift's papers.",
    };
  }
  if (compared.holds === null) {
    return {
      ...open,
      sentence,
      because: "The readings scatter too much to tell whether that is as stated.",
      next: "Read more loads around the meeting point, and each twice.",
    };
  }
  if (compared.holds) {
    return {
      word: "Within",
      holds: true,
      sentence,
      because: "That is as stated.",
      next: "",
      until: whoDecides,
    };
  }
  const light = balance < (values.stated ?? 0);
  return {
    word: "Outside",
    holds: false,
    sentence,
    because: light
      ? "That is less than stated: the car has become heavier, or fillers are missing."
      : "That is more than stated: the car has become lighter, or fillers were added.",
    next: "Compare car fittings and fillers with the papers. Weights are changed only with car and counterweight secured, by the maker's instructions; then read again.",
    until: `Until then brake, traction and drive work against a load they were not made for. ${whoDecides}`,
  };
}

function valuesFor(values: BalanceValues, finding: Finding, pen: Pen): ValueLine[] {
  const { balance, interval, lines } = finding;
  const unit = values.method === "current" ? "A" : "kW";
  const found =
    balance === null ? [] : [pen.value("balance", "Balanced share of the rated load", balance, "%", 2)];
  const bounds =
    interval === null
      ? []
      : [
          pen.value("from", "Lower end, 95 % confidence", interval.from, "%", 2),
          pen.value("to", "Upper end, 95 % confidence", interval.to, "%", 2),
        ];
  if (lines === null) return found;
  const freedom = lines.up.count + lines.down.count - 4;
  const scatter = Math.sqrt((lines.up.residue + lines.down.residue) / Math.max(1, freedom));
  return [
    ...found,
    ...bounds,
    pen.value("slopeUp", "Up, rise over the whole rated load", lines.up.slope, unit, 3, true),
    pen.value("slopeDown", "Down, rise over the whole rated load", lines.down.slope, unit, 3, true),
    ...(freedom < 1
      ? []
      : [pen.value("scatter", "Scatter of the readings about their lines", scatter, unit, 3)]),
  ];
}

const pointsOf = (readings: readonly Reading[]): [number, number][] =>
  readings.map(({ load, value }): [number, number] => [load, value]);

function plot(values: BalanceValues, finding: Finding, lines: Lines, pen: Pen): Drawing {
  const current = values.method === "current";
  const { balance } = finding;
  const extent = loadsOf(lines);
  const bounds = boundsOf(values);
  const loads = [...lines.readingsUp, ...lines.readingsDown].map(({ load }) => load);
  const drawn = [...new Set([...loads, ...(balance === null ? [] : [balance])])].sort(
    (one, other) => one - other,
  );
  const outside = balance !== null && bounds !== null && (balance < bounds.least || balance > bounds.most);
  return {
    kind: "curve",
    title:
      balance === null
        ? "Up and down over the load: the lines do not meet"
        : `Up and down over the load: they meet at ${pen.write(balance, "%", 1)}`,
    x: { label: "Load, share of the rated load", quantity: "ratio", unit: "%", digits: 1 },
    y: current
      ? { label: "Motor current", quantity: "current", unit: "A", digits: 2 }
      : { label: "Motor power", quantity: "power", unit: "kW", digits: 3 },
    series: [
      { name: "up", points: drawn.map((load) => [load, onLine(lines.up, load)]) },
      { name: "down", points: drawn.map((load) => [load, onLine(lines.down, load)]) },
    ],
    dots: [
      { name: "up, read", points: pointsOf(lines.readingsUp) },
      { name: "down, read", points: pointsOf(lines.readingsDown) },
    ],
    limits:
      balance !== null && (balance < extent.least || balance > extent.most)
        ? [
            {
              axis: "x",
              at: balance,
              words: "The lines meet outside the loads that were read",
              wrongSide: null,
            },
          ]
        : [],
    marks:
      balance === null
        ? []
        : [{ x: balance, y: onLine(lines.up, balance), words: pen.write(balance, "%", 1), outside }],
  };
}

function notesOf(values: BalanceValues, finding: Finding, pen: Pen): string[] {
  if (values.method === "empty") {
    return [
      "Friction is taken to be the same up and down. Readings over several loads tell more, and how sure they are.",
    ];
  }
  const notes = [
    "Straight lines are fitted. Near the balance the current of an asynchronous motor runs flat: leave such readings out, or read power.",
    "Common are 40 to 50 %, from memory; what counts is what the installer states.",
  ];
  const { lines, balance, interval } = finding;
  if (lines === null || balance === null) return notes;
  if (interval === null) {
    notes.unshift(
      "How sure it is cannot be said: that takes five readings or more, and lines that cross clearly.",
    );
  }
  const { least, most } = loadsOf(lines);
  if (balance < least || balance > most) {
    notes.unshift(
      `The lines meet outside the loads that were read, ${pen.write(least, "%", 0)} to ${pen.write(most, "%", 0)}. Read loads on both sides.`,
    );
  }
  return notes;
}

function work(values: BalanceValues, pen: Pen): Outcome {
  const finding = findBalance(values);
  const comparisons = compare(values, finding, pen);
  return {
    verdict: verdictOf(values, finding, comparisons, pen),
    comparisons,
    values: valuesFor(values, finding, pen),
    drawings: finding.lines === null ? [] : [plot(values, finding, finding.lines, pen)],
    problems: doubtsOf(values, finding),
    notes: notesOf(values, finding, pen),
  };
}

export const counterweightBalance = defineCalculator({
  id: "counterweight-balance",
  name: "Counterweight balance",
  purpose:
    "Finds the balanced share of the rated load from motor readings up and down over the load, how sure it is, and whether it is as stated.",
  words: [
    "counterweight balance",
    "balance after a new car floor",
    "car became heavier",
    "counterweight too light",
    "counterweight too heavy",
    "fillers missing",
    "motor current up and down",
    "drive overcurrent in one direction",
    "balance factor",
    "half load balance",
    "motor runs hot after modernisation",
  ],
  inputs: balanceFields,
  cautions: [
    "Current and power are measured live: only trained people, rated meter, clamp before voltage leads, covers closed again.",
    "Test weights: spread them over the car floor, do not exceed the rated load, nobody rides along.",
    "Counterweight fillers are changed only with car and counterweight secured and the machine locked off.",
    "Only trained people; local codes and the maker's instructions decide.",
  ],
  sources: [methodSource, statedSource, intervalSource, emptySource],
  formulas: balanceFormulas,
  work,
});
