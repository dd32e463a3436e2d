import { betaQuantile } from "../statistics/incomplete-beta.ts";
import { standardGravity } from "./drive-physics.ts";

/** Balance of the counterweight from readings up and down over the load. Loads are shares of the rated load. */
export interface Reading {
  readonly load: number;
  /** Current, torque or power: any one unit for all readings. */
  readonly value: number;
}

export interface Line {
  readonly intercept: number;
  readonly slope: number;
  readonly count: number;
  readonly meanLoad: number;
  /** Sum of the squares of load − mean load. */
  readonly spread: number;
  /** Sum of the squares of what is left between reading and line. */
  readonly residue: number;
}

export const onLine = ({ intercept, slope }: Line, load: number): number => intercept + slope * load;

/** Least squares. @returns null with fewer than two different loads */
export function fitLine(readings: readonly Reading[]): Line | null {
  const count = readings.length;
  const sum = (of: (reading: Reading) => number): number =>
    readings.reduce((total, reading) => total + of(reading), 0);
  const meanLoad = sum(({ load }) => load) / count;
  const meanValue = sum(({ value }) => value) / count;
  const spread = sum(({ load }) => (load - meanLoad) ** 2);
  if (count < 2 || spread < 1e-12) return null;
  const slope = sum(({ load, value }) => (load - meanLoad) * (value - meanValue)) / spread;
  const intercept = meanValue - slope * meanLoad;
  const residue = sum(({ load, value }) => (value - intercept - slope * load) ** 2);
  return { intercept, slope, count, meanLoad, spread, residue };
}

/** Load at which both lines meet. @returns null where they run side by side */
export function crossingOf(up: Line, down: Line): number | null {
  const turn = up.slope - down.slope;
  const steep = Math.abs(up.slope) + Math.abs(down.slope);
  if (Math.abs(turn) <= 1e-9 * steep || steep === 0) return null;
  return (down.intercept - up.intercept) / turn;
}

/** Quantile of Student's t, upper side: t with P(T > t) = tail. @param freedom degrees of freedom, > 0 */
export function studentQuantile(tail: number, freedom: number): number {
  // T² / (freedom + T²) is beta distributed with shapes 1/2 and freedom/2.
  const share = betaQuantile(2 * tail, 0.5, freedom / 2, "upper");
  return Math.sqrt((freedom * share) / (1 - share));
}

export interface Interval {
  readonly from: number;
  readonly to: number;
}

/**
 * Confidence interval of the crossing by Fieller's theorem: the loads at which the difference of the lines is no
 * larger than t times its own standard error. Both lines share one scatter, freedom n_up + n_down − 4.
 * @returns null where there are too few readings, or the lines cross too flat for any bounded interval
 */
export function crossingInterval(up: Line, down: Line, confidence: number): Interval | null {
  const freedom = up.count + down.count - 4;
  if (freedom < 1) return null;
  const variance = (up.residue + down.residue) / freedom;
  const scaled = studentQuantile((1 - confidence) / 2, freedom) ** 2 * variance;
  // (c + m q)² <= k (1/n_u + (q − x_u)²/S_u + 1/n_d + (q − x_d)²/S_d), as a q² + b q + c <= 0
  const apart = up.intercept - down.intercept;
  const turn = up.slope - down.slope;
  const lines = [up, down];
  const add = (of: (line: Line) => number): number => lines.reduce((total, line) => total + of(line), 0);
  const square = turn ** 2 - scaled * add(({ spread }) => 1 / spread);
  const linear = 2 * apart * turn + 2 * scaled * add(({ meanLoad, spread }) => meanLoad / spread);
  const rest = apart ** 2 - scaled * add(({ count, meanLoad, spread }) => 1 / count + meanLoad ** 2 / spread);
  if (!(square > 1e-12 * turn ** 2)) return null;
  const root = Math.sqrt(Math.max(0, linear ** 2 - 4 * square * rest));
  return { from: (-linear - root) / (2 * square), to: (-linear + root) / (2 * square) };
}

export interface EmptyRuns {
  readonly ratedLoad: number;
  /** Power at the motor shaft, W; below 0 where the load drives the motor. */
  readonly powerUp: number;
  readonly powerDown: number;
  /** m/s, > 0 */
  readonly speedUp: number;
  readonly speedDown: number;
}

/** q = (N_down/v_down − N_up/v_up)/(2 Q g), from the empty car alone. */
export function balanceOfEmptyRuns({ ratedLoad, powerUp, powerDown, speedUp, speedDown }: EmptyRuns): number {
  return (powerDown / speedDown - powerUp / speedUp) / (2 * ratedLoad * standardGravity);
}
