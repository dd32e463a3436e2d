/**
 * Rope safety factor, EN 81-50:2020, 5.12 (before: EN 81-1, annex N). From notes on the clause, not compared with the
 * purchased text. SI: m, kg, N, Pa. Valid for steel ropes after EN 12385-5 on sheaves of steel or cast iron.
 */

/** Standard acceleration of free fall, m/s². */
export const gravity = 9.80665;

type Table = readonly (readonly [number, number])[];

/** Equivalent pulleys of a traction sheave with V grooves, by the groove angle in degrees. */
export const grooveV: Table = [
  [35, 18.5],
  [36, 16],
  [38, 12],
  [40, 10],
  [42, 8],
  [45, 6.5],
  [50, 5],
];

/** Equivalent pulleys of a traction sheave with undercut U or V grooves, by the undercut angle in degrees. */
export const grooveUndercut: Table = [
  [75, 2.5],
  [80, 3],
  [85, 3.8],
  [90, 5],
  [95, 6.7],
  [100, 10],
  [105, 15.2],
];

/** Angles come through radians and back; this much outside an end of a table is still its end, degrees. */
const slackDegrees = 1e-9;

/** @returns the value on the straight line between two neighbours, or null outside the table */
export function interpolated(table: Table, at: number): number | null {
  const last = table.length - 1;
  const [least, most] = [table[0]?.[0] ?? 0, table[last]?.[0] ?? 0];
  if (at < least - slackDegrees || at > most + slackDegrees) return null;
  const place = Math.min(Math.max(least, at), most);
  const above = table.findIndex(([x]) => x >= place);
  const [x1, y1] = table[above] ?? [0, 0];
  const [x0, y0] = table[Math.max(0, above - 1)] ?? [0, 0];
  return x1 === x0 ? y1 : y0 + ((y1 - y0) * (place - x0)) / (x1 - x0);
}

export interface PulleyRequest {
  /** Diameter of the traction sheave, m. */
  readonly sheave: number;
  /** Mean diameter of all pulleys but the traction sheave, m; not used where there is no pulley. */
  readonly pulley: number;
  /** Pulleys with simple bends. */
  readonly simple: number;
  /** Pulleys with reversed bends. */
  readonly reversed: number;
}

/** Ratio factor K_p = (D_t/D_p)^4; 1 where there is no pulley. 5.12.2.2. */
export const pulleyFactor = ({ sheave, pulley, simple, reversed }: PulleyRequest): number =>
  simple + reversed === 0 ? 1 : (sheave / pulley) ** 4;

/** N_equiv(p) = K_p (N_ps + 4 N_pr). 5.12.2.2. */
export const pulleyBends = (request: PulleyRequest): number =>
  pulleyFactor(request) * (request.simple + 4 * request.reversed);

/** The diagram is drawn for these D_t/d_r; outside it nothing may be read. 5.12.3. */
export const diagramRange = [34, 80] as const;

/**
 * S_f = 10^(2.6834 - log(695.85e6 N/(D_t/d_r)^8.567)/log(77.09 (D_t/d_r)^-2.894)), 5.12.3.
 * @param ratio D_t/d_r
 * @param bends N_equiv, > 0
 * @returns null outside the diagram
 */
export function requiredByBends(ratio: number, bends: number): number | null {
  const [least, most] = diagramRange;
  if (ratio < least - 1e-9 || ratio > most + 1e-9 || !(bends > 0)) return null;
  const top = Math.log10((695.85e6 * bends) / ratio ** 8.567);
  const bottom = Math.log10(77.09 * ratio ** -2.894);
  return 10 ** (2.6834 - top / bottom);
}

/** Fixed least safety factor, EN 81-20:2020, 5.5.2.2; it does not replace the value of 5.12, the larger one governs. */
export const fixedMinimum = (ropes: number): number => (ropes >= 3 ? 12 : 16);

/** K factors of the minimum breaking force (EN 12385; published). */
export const ropeFactors = { "6x19 fibre": 0.33, "8x19 fibre": 0.293, "8x19 steel": 0.356 } as const;
export type RopeConstruction = keyof typeof ropeFactors;

/**
 * F_min = K d² R_r, EN 12385.
 * @param diameter m
 * @param tensile N/mm², the combined grade of a dual tensile rope
 * @returns N
 */
export const breakingForce = (construction: RopeConstruction, diameter: number, tensile: number): number =>
  ropeFactors[construction] * (diameter * 1000) ** 2 * tensile;

export interface RopeForceRequest {
  readonly ropes: number;
  /** Roping: 1 for 1:1, 2 for 2:1. */
  readonly roping: number;
  readonly car: number;
  readonly ratedLoad: number;
  /** Mass of all ropes on the car side with the car at the lowest landing, kg. */
  readonly ropeMass: number;
}

/**
 * Largest static force in one rope: car with rated load at the lowest landing, EN 81-20, 5.5.2.2.
 * F = g ((P + Q)/r + M)/n, with M the rope mass of one vertical part; N.
 */
export const forceOfOneRope = ({ ropes, roping, car, ratedLoad, ropeMass }: RopeForceRequest): number =>
  (gravity * ((car + ratedLoad) / roping + ropeMass)) / ropes;
