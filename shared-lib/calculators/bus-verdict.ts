import { type BusValues, lastVoltage, terminatorsFound } from "./bus-judgement.ts";
import type { Riser, TerminatorsFound } from "./bus-physics.ts";
import type { Pen } from "./pen.ts";
import type { Comparison, Verdict } from "./result.ts";
import { whoDecides } from "./source.ts";

interface ReadingWords {
  readonly sentence: string;
  readonly next: string;
}

const dead = "Power off, locked off and proved dead:";

/** What a reading outside 50 to 70 ohm means and where to look. */
const readingWords: Readonly<Record<Exclude<TerminatorsFound, "two">, ReadingWords>> = {
  one: {
    sentence: "Only one terminator is seen: the other is missing, or a bus line is open.",
    next: `${dead} measure at the far end as well. About 120 Ω there too: the line is open between. Find the end without its terminator.`,
  },
  none: {
    sentence: "No terminator is seen: both are missing, or the line is open near the place of measuring.",
    next: `${dead} check the plug where you measure, then measure panel by panel towards the nearer terminator.`,
  },
  "more than two": {
    sentence: "More than two terminators are seen: about 40 Ω is three.",
    next: `${dead} look for a panel in the middle with its terminator switched on, or a spare one left in.`,
  },
  short: {
    sentence: "The two bus lines are shorted.",
    next: `${dead} open the bus in the middle and measure both halves; halve again on the side of the short.`,
  },
  unclear: {
    sentence: "The reading fits no number of terminators: a bad contact, moisture, or a partial short.",
    next: `${dead} unplug half of the panels and measure again, then look at plugs for moisture and green copper.`,
  },
};

function lengthVerdict(failed: Comparison): { sentence: string; next: string } {
  if (failed.key === "busLength") {
    return {
      sentence: "The bus is longer than its bit rate allows.",
      next: "Compare bit rate and cable route with the maker's instructions; all panels share one bit rate.",
    };
  }
  if (failed.key === "directCurrent") {
    return {
      sentence: "The bus is longer than the resistance of its cable allows.",
      next: "Compare the cable with the maker's data: a larger conductor or fewer panels on this line.",
    };
  }
  return {
    sentence:
      failed.key === "longestStub"
        ? "A stub is longer than the bit rate allows."
        : "The stubs together are longer than the bit rate allows.",
    next: "Lead the bus through the panels instead of branching off to them.",
  };
}

function failedVerdict(values: BusValues, riser: Riser | null, failed: Comparison, pen: Pen): Verdict {
  const outside = { word: "Outside", holds: false, because: "" } as const;
  if (failed.key === "termination") {
    const found = terminatorsFound(values);
    // A bound itself counts as inside 50 to 70 in both readings, so "two" cannot fail here.
    const words = readingWords[found === "two" || found === "not measured" ? "unclear" : found];
    return { ...outside, ...words, until: `Until then panels may drop out at random. ${whoDecides}` };
  }
  if (failed.key === "drop" || failed.key === "lastVoltage") {
    const last = riser === null ? 0 : lastVoltage(riser);
    const sentence =
      failed.key === "drop"
        ? "The riser cannot carry these currents: the drop is larger than the supply."
        : `The last panel gets only ${pen.write(last, "V", 2)}.`;
    return {
      ...outside,
      sentence,
      because: "Every panel's current flows through the first spans.",
      next: "Measure the voltage at the last panel with all panels lit; a larger conductor, a second feed, or a feed in the middle.",
      until: `Until then the last panels may restart when many lamps are lit. ${whoDecides}`,
    };
  }
  return { ...outside, ...lengthVerdict(failed), until: whoDecides };
}

export function busVerdict(
  values: BusValues,
  riser: Riser | null,
  comparisons: readonly Comparison[],
  pen: Pen,
): Verdict {
  const failed = comparisons.find((each) => each.holds === false);
  if (failed !== undefined) return failedVerdict(values, riser, failed, pen);
  const passed = comparisons.filter((each) => each.holds === true);
  if (passed.length === 0) {
    return {
      word: "Not enough",
      holds: null,
      sentence: "Nothing entered here can be put against a limit.",
      because: "",
      next: "Enter a reading between the bus lines, the bit rate with the bus length, or the supply riser.",
      until: whoDecides,
    };
  }
  const readings = passed.map((each) => each.reading.replace(/,$/, "")).join("; ");
  const read = passed.some((each) => each.key === "termination");
  return {
    word: "Within",
    holds: true,
    sentence: `Within what was entered: ${readings}.`,
    because: read ? "Both terminators are seen." : "The terminators were not measured.",
    next: read ? "" : "Measure between the two bus lines with power off: it is the quickest check of a bus.",
    until: whoDecides,
  };
}
