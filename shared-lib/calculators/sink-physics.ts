import { gravity } from "./suspension-physics.ts";

/** Elastic lengthening of ropes and springs under load; derived. SI: m, m², kg, N, Pa, N/m. */

/** Metal area over d² of common lift ropes (published). */
export const areaFactors = { "6x19 fibre": 0.384, "8-strand fibre": 0.357, "8-strand steel": 0.468 } as const;
export type AreaConstruction = keyof typeof areaFactors;

/** A = C d², m². */
export const metalArea = (construction: AreaConstruction, diameter: number): number =>
  areaFactors[construction] * diameter ** 2;

/** Lengthening of one rope, dL = dT L/(E A), m. */
export const lengthening = (force: number, length: number, modulus: number, area: number): number =>
  (force * length) / (modulus * area);

export interface SinkRequest {
  /** 1 for 1:1, 2 for 2:1. */
  readonly roping: number;
  readonly ropes: number;
  /** Free ropes between car and machine, m. */
  readonly height: number;
  /** Metal area of one rope, m². */
  readonly area: number;
  /** Modulus of elasticity of the rope, Pa. */
  readonly modulus: number;
  /** Of one rope-end spring, N/m; null: none, or stiff. */
  readonly spring: number | null;
}

/**
 * How far the car sinks for one more kilogram, m/kg: g h/(r n E A), and for the springs g/(r² n k).
 * Each rope takes 1/(r n) of the load over r times the height, and the car moves 1/r of what the ropes give.
 */
export function sinkPerMass({ roping, ropes, height, area, modulus, spring }: SinkRequest): number {
  const ofRopes = (gravity * height) / (roping * ropes * modulus * area);
  return ofRopes + (spring === null ? 0 : gravity / (roping ** 2 * ropes * spring));
}
