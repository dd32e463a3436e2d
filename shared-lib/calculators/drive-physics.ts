/**
 * Sheave, gear, encoder and motor. SI throughout: m, m/s, kg, W, N·m, revolutions per second. Derived; the table of
 * geared lifts in tests/published stands against an outside source.
 */

/** Standard acceleration of free fall, m/s², exact by definition. */
export const standardGravity = 9.80665;

/** Rope speed over car speed by the way the car hangs. */
export const ropingRatio = { "1:1": 1, "2:1": 2, "4:1": 4 } as const;
export type Roping = keyof typeof ropingRatio;
export const ropingNames = ["1:1", "2:1", "4:1"] as const satisfies readonly Roping[];

export interface Suspended {
  /** Diameter of the traction sheave at the middle of the rope, m, > 0. */
  readonly sheaveDiameter: number;
  /** 1, 2 or 4. */
  readonly roping: number;
}

/** n = v r/(π D). @returns revolutions of the sheave per second */
export const sheaveSpeed = (carSpeed: number, { sheaveDiameter, roping }: Suspended): number =>
  (carSpeed * roping) / (Math.PI * sheaveDiameter);

/** v = n π D/(i r). @param motorSpeed revolutions per second @param gear motor over sheave revolutions */
export const carSpeedAt = (motorSpeed: number, gear: number, hung: Suspended): number =>
  (motorSpeed * Math.PI * hung.sheaveDiameter) / (gear * hung.roping);

export interface EncoderScale extends Suspended {
  /** Pulses per revolution of the encoder. */
  readonly pulses: number;
  /** Edges counted of each pulse: 1, 2 or 4. */
  readonly edges: number;
  /** Encoder revolutions per sheave revolution. */
  readonly turns: number;
}

/** N k i r/(π D). @returns counts per metre of car travel */
export const countsPerMetre = ({ pulses, edges, turns, roping, sheaveDiameter }: EncoderScale): number =>
  (pulses * edges * turns * roping) / (Math.PI * sheaveDiameter);

/** n₀ = 2 f/p. @param poles number of poles, not pairs @returns revolutions per second */
export const synchronousSpeed = (frequency: number, poles: number): number => (2 * frequency) / poles;

/** f = n p/2, for a permanent magnet motor. @param speed revolutions per second */
export const synchronousFrequency = (speed: number, poles: number): number => (speed * poles) / 2;

/** s = (n₀ − n)/n₀ */
export const slipOf = (synchronous: number, speed: number): number => (synchronous - speed) / synchronous;

export interface Hoist {
  readonly ratedLoad: number;
  /** Share of the rated load that the counterweight balances. */
  readonly balance: number;
  readonly speed: number;
  /** Whole efficiency between motor shaft and car, 0 to 1. */
  readonly efficiency: number;
}

/**
 * Power at the motor shaft in steady travel, W: above 0 the motor drives, below 0 it is driven by the load.
 * Driving P = m g v/η, driven P = m g v η, m the mass out of balance on the side that must be lifted.
 * @param load in the car, kg
 */
export function steadyPower(hoist: Hoist, load: number, direction: "up" | "down"): number {
  const excess = load - hoist.balance * hoist.ratedLoad;
  const lifted = (direction === "up" ? excess : -excess) * standardGravity * hoist.speed;
  return lifted > 0 ? lifted / hoist.efficiency : lifted * hoist.efficiency;
}

/** Torque at the sheave while driving, rope weight not counted: M = m g D/(2 r η). @param mass out of balance, kg */
export const sheaveTorque = (
  mass: number,
  efficiency: number,
  { sheaveDiameter, roping }: Suspended,
): number => (mass * standardGravity * sheaveDiameter) / (2 * roping * efficiency);
