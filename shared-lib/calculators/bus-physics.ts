/** Line resistance, supply drop and length limits of a panel bus. SI: ohm, V, A, m, bit/s. */

/** Nominal terminator, ohm (ISO 11898-2; published). */
export const terminator = 120;

export interface BusLine {
  /** m */
  readonly length: number;
  /** One conductor, ohm/m. */
  readonly resistance: number;
  /** Panels at equal distances, the last at the far end. */
  readonly panels: number;
  /** Differential input resistance of a panel, ohm; null: neglected. */
  readonly inputResistance: number | null;
  readonly near: boolean;
  readonly far: boolean;
}

/**
 * Resistance between the two bus lines seen at the near end, by the ladder of line sections and panels.
 * @returns ohm, or null where nothing closes the loop
 */
export function resistanceSeen(line: BusLine): number | null {
  const panel = line.inputResistance === null ? 0 : 1 / line.inputResistance;
  const sections = Math.max(1, line.panels);
  const section = (2 * line.length * line.resistance) / sections;
  let conductance = line.far ? 1 / terminator : 0;
  for (let index = 0; index < sections; index += 1) {
    if (line.panels > 0) conductance += panel;
    conductance /= 1 + conductance * section;
  }
  if (line.near) conductance += 1 / terminator;
  return conductance > 0 ? 1 / conductance : null;
}

export type TerminatorsFound = "two" | "one" | "none" | "more than two" | "short" | "unclear";

/**
 * What a reading between the two bus lines with power off says. About 60 ohm (accepted 50 to 70): both terminators;
 * 120: one missing or a line open; 40: three; 0: short (published). The bands between are our own reading of those.
 */
export function readTerminators(ohm: number): TerminatorsFound {
  if (ohm < 5) return "short";
  if (ohm < 30) return "unclear";
  if (ohm < 50) return "more than two";
  if (ohm <= 70) return "two";
  if (ohm < 95) return "unclear";
  return ohm <= 160 ? "one" : "none";
}

export interface BitRateLimits {
  readonly bitRate: number;
  readonly length: number;
  /** Longest single stub and sum of all, m; null where the table has none. */
  readonly stub: number | null;
  readonly stubs: number | null;
}

/** Bit rate against bus length and stubs: practice after CiA recommendations (published). */
export const bitRateLimits: readonly BitRateLimits[] = [
  { bitRate: 1_000_000, length: 25, stub: 1.5, stubs: 7.5 },
  { bitRate: 800_000, length: 50, stub: 2.5, stubs: 12.5 },
  { bitRate: 500_000, length: 100, stub: 5.5, stubs: 27.5 },
  { bitRate: 250_000, length: 250, stub: 11, stubs: 55 },
  { bitRate: 125_000, length: 500, stub: 22, stubs: 110 },
  { bitRate: 50_000, length: 1000, stub: 55, stubs: 275 },
  { bitRate: 20_000, length: 2500, stub: null, stubs: null },
  { bitRate: 10_000, length: 5000, stub: null, stubs: null },
];

export interface DirectCurrentLimit {
  /** One conductor, ohm/m. */
  readonly resistance: number;
  readonly nodes: number;
  /** Safety margin k_sm of the threshold: 0 none, 0.2 a fifth. */
  readonly margin: number;
}

/**
 * Bus length up to which the voltage at the far node stays over the threshold (application note AN96116,
 * equation 16, published): V_do 1.5 V, V_th 1.0 V, R_T 118 ohm, R_d 20 kohm.
 */
export function directCurrentLength({ resistance, nodes, margin }: DirectCurrentLimit): number {
  const [driven, threshold, termination, input] = [1.5, 1, 118, 20_000];
  const ratio = driven / (threshold + margin * (driven - threshold)) - 1;
  const load = (termination * input) / (input + (nodes - 1) * termination);
  return (ratio * load) / (2 * resistance);
}

/** IEC 60228 class 5, plain copper, most ohm per m of one conductor at 20 °C (published). */
export const conductorResistance = {
  "0.5": 0.039,
  "0.75": 0.026,
  "1.0": 0.0195,
  "1.5": 0.0133,
  "2.5": 0.00798,
  "4.0": 0.00495,
} as const;

export interface Riser {
  readonly supply: number;
  readonly panels: number;
  /** Current of one panel, A. */
  readonly current: number;
  /** Distance between panels, m. */
  readonly span: number;
  /** From supply to first panel, m. */
  readonly feeder: number;
  /** One conductor, ohm/m. */
  readonly resistance: number;
}

/**
 * Drop at panel k of n, counted from the supply: n I R_f + I R_s (k n - k (k - 1)/2), with R_s and R_f there and
 * back. At the last panel I R_s n (n + 1)/2 + n I R_f; the 0 V conductor carries half. Derived, constant currents.
 */
export function dropAt(riser: Riser, panel: number): number {
  const { panels: n, current } = riser;
  const span = 2 * riser.span * riser.resistance;
  const feeder = 2 * riser.feeder * riser.resistance;
  return n * current * feeder + current * span * (panel * n - (panel * (panel - 1)) / 2);
}
