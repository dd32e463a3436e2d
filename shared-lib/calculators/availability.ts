import type { Formula } from "../formulas/formula.ts";
import type { Interval } from "../statistics/poisson-interval.ts";
import { availabilityFields } from "./availability-fields.ts";
import { availabilityOf, type CallRate, callRate, chanceOfAtMost, changeOf } from "./availability-physics.ts";
import { defineCalculator, type Outcome } from "./calculator.ts";
import type { Drawing } from "./drawing.ts";
import type { ValuesOf } from "./field.ts";
import type { Pen } from "./pen.ts";
import type { Comparison, Problem, ValueLine, Verdict } from "./result.ts";
import { clause, derived, site, whoDecides } from "./source.ts";

type Values = ValuesOf<typeof availabilityFields>;

const contract = site("as the contract says");
const figures = clause(
  "from memory",
  "EN 15341 and IEC 61703",
  "",
  "",
  "availability, mean time between failures, mean down time",
);
const interval = derived("exact interval of a counted rate (Garwood), gamma quantiles");
const practice = clause(
  "from memory",
  "",
  "",
  "",
  "often contracted: at most 4 call-backs a lift and year, 98 to 99.5 % availability; no standard says so",
);

interface Figures extends CallRate {
  readonly confidence: number;
  /** null: not entered, or longer than the time watched. */
  readonly availability: number | null;
  readonly change: Interval | null;
}

const tooMuchDown = (values: Values): boolean =>
  values.down !== undefined && values.down > values.lifts * values.period;

function figuresOf(values: Values): Figures {
  const confidence = Number(values.confidence) / 100;
  const request = { calls: values.calls, lifts: values.lifts, period: values.period, confidence };
  const rate = callRate(request);
  const { callsBefore, periodBefore, down } = values;
  return {
    ...rate,
    confidence,
    availability: down === undefined || tooMuchDown(values) ? null : availabilityOf(down, rate.exposure),
    change:
      callsBefore === undefined || periodBefore === undefined
        ? null
        : changeOf(request, { calls: callsBefore, period: periodBefore }),
  };
}

function compare(values: Values, found: Figures, pen: Pen): Comparison[] {
  const { most, least } = values;
  const comparisons: Comparison[] = [];
  if (most !== undefined) {
    comparisons.push(
      pen.compare({
        key: "rate",
        label: "Call-backs counted",
        // Counted against what the contract allows in all: a rate in 1/s is too small a number to compare.
        value: values.calls,
        unit: "pieces",
        digits: 0,
        most: most * found.exposure,
        limitWords: `at most ${pen.write(most * found.exposure, "pieces", 1)}, ${pen.write(most, "1/year", 2)} of one lift`,
        source: contract,
        field: "most",
      }),
    );
  }
  if (least !== undefined && found.availability !== null) {
    comparisons.push(
      pen.compare({
        key: "availability",
        label: "Availability",
        value: found.availability,
        unit: "%",
        digits: 3,
        least,
        limitWords: `at least ${pen.write(least, "%", 2)}`,
        source: contract,
        field: "least",
      }),
    );
  }
  return comparisons;
}

const spanWords = ({ interval: { lower, upper }, confidence }: Figures, pen: Pen): string =>
  `with ${pen.write(confidence, "%", 0)} confidence between ${pen.write(lower, "1/year", 2)} and ${pen.write(upper, "1/year", 2)}`;

/** Whether the count could as well have come from a rate on the other side of what the contract says. */
function chanceWords(values: Values, found: Figures, pen: Pen): string {
  const { most } = values;
  const span = spanWords(found, pen);
  const capital = span.charAt(0).toUpperCase() + span.slice(1);
  if (most === undefined) return `${capital}.`;
  const sure = most < found.interval.lower || most > found.interval.upper;
  return sure
    ? `${capital}: this is no chance.`
    : `${capital}: that includes what the contract says, so it can be chance.`;
}

function verdictOf(values: Values, found: Figures, comparisons: readonly Comparison[], pen: Pen): Verdict {
  const rate = pen.write(found.rate, "1/year", 2);
  const because = chanceWords(values, found, pen);
  const failed = comparisons.find((each) => each.holds === false);
  if (failed?.key === "rate") {
    return {
      word: "Outside",
      holds: false,
      sentence:
        `One lift has ${rate} call-backs; the contract allows ${pen.write(values.most ?? 0, "1/year", 2)}.`.replace(
          / a year call-backs/,
          " call-backs a year",
        ),
      because,
      next: "Look which lifts and which causes come back: a few of them mostly make the rate.",
      until: whoDecides,
    };
  }
  if (failed !== undefined) {
    return {
      word: "Outside",
      holds: false,
      sentence: `The lifts were available ${pen.write(found.availability ?? 0, "%", 3)} of the time; the contract asks for ${pen.write(values.least ?? 0, "%", 2)}.`,
      because,
      next: "Look which calls made the down time: parts waited for, nights, repeats.",
      until: whoDecides,
    };
  }
  if (comparisons.length === 0) {
    return {
      word: "Not enough",
      holds: null,
      sentence: `Call-backs of one lift: ${rate}.`,
      because,
      next: "Enter what the contract allows, to compare.",
      until: whoDecides,
    };
  }
  return {
    word: "Within",
    holds: true,
    sentence: `What the contract asks for is kept: ${comparisons.map((each) => each.reading).join("; ")}.`,
    because,
    next: "",
    until: whoDecides,
  };
}

function valuesOf(values: Values, found: Figures, pen: Pen): ValueLine[] {
  const { exposure, rate, availability, change } = found;
  const lines = [
    pen.value("rate", "Call-backs of one lift", rate, "1/year", 3),
    pen.value("rateLower", "at least", found.interval.lower, "1/year", 3),
    pen.value("rateUpper", "at most", found.interval.upper, "1/year", 3),
    pen.value("mtbfLeast", "Mean time between call-backs, at least", 1 / found.interval.upper, "h", 0),
  ];
  if (values.calls > 0) {
    lines.push(pen.value("mtbf", "Mean time between call-backs", exposure / values.calls, "h", 0));
    if (values.down !== undefined) {
      lines.push(pen.value("meanDown", "Mean down time of one call", values.down / values.calls, "h", 3));
    }
    if (values.repair !== undefined) {
      lines.push(
        pen.value("meanRepair", "Mean repair time of one call", values.repair / values.calls, "h", 3),
      );
    }
  }
  if (availability !== null) lines.push(pen.value("availability", "Availability", availability, "%", 3));
  if (change !== null) {
    lines.push(pen.value("changeLower", "Rate over rate before, at least", change.lower, "one", 3));
    if (change.upper !== null) {
      lines.push(pen.value("changeUpper", "Rate over rate before, at most", change.upper, "one", 3));
    }
  }
  return lines;
}

const points = 60;

function curveOf(values: Values, found: Figures, pen: Pen): Drawing {
  const { exposure, interval: span, confidence } = found;
  const end = Math.max(span.upper * 1.3, (values.most ?? 0) * 1.1);
  const at = (rate: number): number => chanceOfAtMost(values.calls, rate, exposure);
  const { most } = values;
  const tail = (1 - confidence) / 2;
  return {
    kind: "curve",
    title: `Chance of at most ${values.calls} call-backs, by the rate that lies behind them`,
    x: { label: "Call-backs of one lift", quantity: "frequency", unit: "1/year", digits: 1 },
    y: { label: "Chance", quantity: "ratio", unit: "%", digits: 0 },
    series: [
      {
        name: `at most ${values.calls}`,
        points: Array.from({ length: points + 1 }, (_, index): [number, number] => {
          const rate = (end * index) / points;
          return [rate, at(rate)];
        }),
      },
    ],
    limits: [{ axis: "y", at: tail, words: `upper end, ${pen.write(tail, "%", 1)}`, wrongSide: null }],
    marks:
      most === undefined
        ? []
        : [{ x: most, y: at(most), words: `contract, ${pen.write(at(most), "%", 1)}`, outside: false }],
  };
}

function contradictions(values: Values): Problem[] {
  const problems: Problem[] = [];
  if (tooMuchDown(values)) {
    const sentence =
      "More down time than these lifts were watched. Hours of one lift, or another period? It is left out until you decide.";
    problems.push({ field: "down", sentence });
  }
  if (values.repair !== undefined && values.down !== undefined && values.repair > values.down) {
    const sentence =
      "Repair cannot take longer than the lift was down. Computed as entered until you decide.";
    problems.push({ field: "repair", sentence });
  }
  const { callsBefore, periodBefore } = values;
  if ((callsBefore === undefined) !== (periodBefore === undefined)) {
    const field = callsBefore === undefined ? "callsBefore" : "periodBefore";
    problems.push({ field, sentence: "The period before needs both, its call-backs and its length." });
  }
  return problems;
}

function notesOf({ change }: Figures, pen: Pen): string[] {
  const notes = [
    "Computed as if calls came independently of each other; repeats of one fault widen the truth.",
  ];
  if (change === null) return notes;
  const write = (value: number): string => pen.write(value, "one", 2);
  const upper = change.upper === null ? "without an upper end" : `at most ${write(change.upper)} times`;
  const sure =
    change.lower > 1
      ? "it has become more"
      : change.upper !== null && change.upper < 1
        ? "it has become less"
        : "no change can be told from chance";
  return [`Against the period before: at least ${write(change.lower)} times, ${upper}: ${sure}.`, ...notes];
}

function work(values: Values, pen: Pen): Outcome {
  const found = figuresOf(values);
  const comparisons = compare(values, found, pen);
  return {
    verdict: verdictOf(values, found, comparisons, pen),
    comparisons,
    values: valuesOf(values, found, pen),
    drawings: [curveOf(values, found, pen)],
    problems: contradictions(values),
    notes: notesOf(found, pen),
  };
}

const formulas: readonly Formula[] = [
  {
    name: "Rate of call-backs",
    expression: "q = k/(n*t)",
    symbols: {
      q: ["1/year", "call-backs of one lift"],
      k: ["pieces", "call-backs counted"],
      n: ["pieces", "lifts"],
      t: ["d", "time watched"],
    },
    source: figures,
  },
  {
    name: "Its interval",
    expression: "G_k/(n*t) <= q <= G_m/(n*t)",
    symbols: {
      q: ["1/year", "rate that lies behind the count"],
      G_k: ["", "lower quantile of the gamma distribution of shape k, 0 where nothing was counted"],
      G_m: ["", "upper quantile of the gamma distribution of shape k + 1"],
      n: ["pieces", "lifts"],
      t: ["d", "time watched"],
    },
    source: interval,
  },
  {
    name: "Availability and means",
    expression: "A = (n*t - t_d)/(n*t); t_b = n*t/k; t_m = t_d/k",
    symbols: {
      A: ["%", "availability"],
      n: ["pieces", "lifts"],
      t: ["d", "time watched"],
      t_d: ["h", "down time of all lifts"],
      t_b: ["h", "mean time between call-backs"],
      t_m: ["h", "mean down time of one call"],
      k: ["pieces", "call-backs counted"],
    },
    source: figures,
  },
];

export const availability = defineCalculator({
  id: "availability",
  name: "Availability and call-backs for a contract",
  purpose:
    "Tells the rate of call-backs with its interval, availability and mean times, against the contract.",
  words: [
    "availability of the lifts",
    "call-backs per lift and year",
    "too many callouts",
    "contract figures",
    "mean time between failures",
    "mean time to repair",
    "key figures for the owner",
    "is it chance or worse than before",
    "down time",
    "response time report",
  ],
  inputs: availabilityFields,
  cautions: [
    "A figure for a contract never decides whether a lift may run: that is decided at the lift by trained people.",
  ],
  sources: [figures, interval, contract, practice],
  formulas,
  work,
});
