import { countsPerMetre, type EncoderScale, ropingNames, ropingRatio } from "./drive-physics.ts";

/** One entry of the scale, or two together, that would make the computed scale the counted one. */
export interface Suspect {
  readonly what: "roping" | "edges" | "roping and edges" | "pulses" | "diameter";
  /** The value that fits: "1:1", "4", "1:1 and 4", "1000". Empty for the diameter, whose value is `diameter`. */
  readonly value: string;
  /** Sheave diameter that fits, m; only of the suspect "diameter". */
  readonly diameter: number | null;
  /** Counted scale over the scale with this value put right, less 1. */
  readonly rest: number;
}

const edgeCounts = [1, 2, 4] as const;

/** Resolutions that incremental encoders are commonly sold with (common practice, no source). */
const commonPulses = [
  250, 256, 360, 400, 500, 512, 600, 720, 800, 1000, 1024, 1200, 1250, 1500, 1800, 2000, 2048, 2500, 3600,
  4000, 4096, 5000, 8192, 10_000,
];

/** A sheave differs from the one on paper by wear, a groove depth or another model, not by half. */
const mostDiameterError = 0.3;

interface Candidate extends Omit<Suspect, "rest" | "diameter"> {
  readonly scale: EncoderScale;
}

function discreteCandidates(entered: EncoderScale): { single: Candidate[]; double: Candidate[] } {
  const otherRopings = ropingNames.filter((name) => ropingRatio[name] !== entered.roping);
  const otherEdges = edgeCounts.filter((edges) => edges !== entered.edges);
  const ropings = otherRopings.map((name) => ({
    what: "roping" as const,
    value: name,
    scale: { ...entered, roping: ropingRatio[name] },
  }));
  const edges = otherEdges.map((count) => ({
    what: "edges" as const,
    value: String(count),
    scale: { ...entered, edges: count },
  }));
  const pulses = commonPulses
    .filter((count) => count !== entered.pulses)
    .map((count) => ({
      what: "pulses" as const,
      value: String(count),
      scale: { ...entered, pulses: count },
    }));
  const double = otherRopings.flatMap((name) =>
    otherEdges.map((count) => ({
      what: "roping and edges" as const,
      value: `${name} and ${count}`,
      scale: { ...entered, roping: ropingRatio[name], edges: count },
    })),
  );
  return { single: [...ropings, ...edges, ...pulses], double };
}

/** Counted over computed scale; 1 where the entries are right. @param counted counts per metre */
export const scaleRatio = (entered: EncoderScale, counted: number): number =>
  counted / countsPerMetre(entered);

/**
 * Which single entry, put right, explains the counted scale; two together only where no single one does. Roping and
 * edges come first where they fit, because their steps are far apart; a diameter fits any ratio near 1.
 * @param counted counts per metre, from a measured travel
 * @param tolerance relative, of travel and diameter together
 * @returns nothing where the ratio is within the tolerance of 1, or nothing fits
 */
export function suspectsOf(entered: EncoderScale, counted: number, tolerance: number): readonly Suspect[] {
  const ratio = scaleRatio(entered, counted);
  if (Math.abs(ratio - 1) <= tolerance) return [];
  const fitting = (candidates: readonly Candidate[]): Suspect[] =>
    candidates
      .map(({ scale, what, value }) => ({
        what,
        value,
        diameter: null,
        rest: scaleRatio(scale, counted) - 1,
      }))
      .filter(({ rest }) => Math.abs(rest) <= tolerance);
  const { single, double } = discreteCandidates(entered);
  const stepped = fitting(single);
  const sure = stepped.filter(({ what }) => what !== "pulses");
  const pulses = stepped
    .filter(({ what }) => what === "pulses")
    .sort((one, other) => Math.abs(one.rest) - Math.abs(other.rest))
    .slice(0, 2);
  const near = Math.abs(1 / ratio - 1) <= mostDiameterError;
  const diameter: Suspect[] = near
    ? [{ what: "diameter", value: "", diameter: entered.sheaveDiameter / ratio, rest: 0 }]
    : [];
  const found = [...sure, ...diameter, ...pulses];
  return found.length > 0 ? found : fitting(double);
}
