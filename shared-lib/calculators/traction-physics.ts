import { gravity } from "./suspension-physics.ts";

/**
 * Traction of ropes on a sheave, EN 81-50:2020, 5.11. From notes on the clause, not compared with the purchased text;
 * friction factor of round grooves also published. Angles in rad as that standard names them, SI throughout.
 *
 * Angles: beta is the whole undercut angle seen from the middle of the rope, gamma the whole angle between the flanks.
 * Other books count half angles from the bottom of the groove: undercut beta/2, end of contact (pi - gamma)/2.
 */
export type GrooveForm = "round" | "wedge" | "hardened wedge";

export interface Groove {
  readonly form: GrooveForm;
  /** Between the flanks, rad. */
  readonly gamma: number;
  /** Undercut, rad; 0 without. */
  readonly beta: number;
}

export type LoadCase = "loading" | "braking" | "stalled";

/** mu, 5.11.2.3.2: 0.1 loading, 0.1/(1 + v/10) emergency braking with v the speed of the ROPE in m/s, 0.2 stalled. */
export function frictionCoefficient(loadCase: LoadCase, ropeSpeed: number): number {
  if (loadCase === "stalled") return 0.2;
  return loadCase === "loading" ? 0.1 : 0.1 / (1 + ropeSpeed / 10);
}

/**
 * f/mu. Round and undercut, 5.11.2.3.1.1: 4 (cos(gamma/2) - sin(beta/2))/(pi - beta - gamma - sin beta + sin gamma).
 * V, 5.11.2.3.1.2: 1/sin(gamma/2) where hardened or stalled, else 4 (1 - sin(beta/2))/(pi - beta - sin beta).
 */
export function frictionRatio({ form, gamma, beta }: Groove, loadCase: LoadCase): number {
  if (form === "round") {
    const under = Math.PI - beta - gamma - Math.sin(beta) + Math.sin(gamma);
    return (4 * (Math.cos(gamma / 2) - Math.sin(beta / 2))) / under;
  }
  if (form === "hardened wedge" || loadCase === "stalled") return 1 / Math.sin(gamma / 2);
  return (4 * (1 - Math.sin(beta / 2))) / (Math.PI - beta - Math.sin(beta));
}

/** e^(f alpha), what the groove can hold; `wrap` is alpha, rad. 5.11.2.1. */
export const heldRatio = (groove: Groove, loadCase: LoadCase, ropeSpeed: number, wrap: number): number =>
  Math.exp(frictionRatio(groove, loadCase) * frictionCoefficient(loadCase, ropeSpeed) * wrap);

export interface Masses {
  /** Empty car, kg. */
  readonly car: number;
  readonly ratedLoad: number;
  readonly counterweight: number;
  /** All ropes over the whole travel, one vertical part, kg. */
  readonly ropes: number;
  /** All compensation over the whole travel, kg. */
  readonly compensation: number;
  /** What of the travelling cable hangs on the car at the top, kg. */
  readonly cable: number;
  /** 1 for 1:1, 2 for 2:1. */
  readonly roping: number;
}

/** Where the car is: 0 at the lowest landing, 1 at the highest. */
type Place = number;

interface Pull {
  /** N */
  readonly car: number;
  readonly counterweight: number;
}

/**
 * Forces in the ropes at the sheave. A suspended mass m pulls with m (g + a)/r. Ropes hang with their one vertical
 * part; over r parts they are accelerated (r² + 2)/3 times as much as the car (their kinetic energy, derived).
 * @param acceleration upwards, of the car; the counterweight has the opposite one
 */
export function pullAt(masses: Masses, load: number, place: Place, acceleration: number): Pull {
  const { roping: r } = masses;
  const ropes = (acceleration * (r ** 2 + 2)) / 3;
  const car = masses.car + load + masses.compensation * place + masses.cable * place;
  const counterweight = masses.counterweight + masses.compensation * (1 - place);
  return {
    car: (car * (gravity + acceleration)) / r + masses.ropes * (1 - place) * (gravity + ropes),
    counterweight: (counterweight * (gravity - acceleration)) / r + masses.ropes * place * (gravity - ropes),
  };
}

/** The worst case found: what pulls, against what, and in which position. */
export interface Worst {
  readonly ratio: number;
  /** N, the larger and the smaller one. */
  readonly larger: number;
  readonly smaller: number;
  readonly place: "lowest landing" | "highest landing";
  readonly load: "empty" | "full" | "125 %";
  readonly direction: "up" | "down" | null;
}

const placeWords = (place: Place): Worst["place"] => (place === 0 ? "lowest landing" : "highest landing");

function worstOf(pull: Pull, rest: Pick<Worst, "load" | "direction">, place: Place): Worst {
  const larger = Math.max(pull.car, pull.counterweight);
  const smaller = Math.min(pull.car, pull.counterweight);
  return { ratio: larger / smaller, larger, smaller, place: placeWords(place), ...rest };
}

const largest = (found: readonly Worst[]): Worst =>
  found.reduce((one, other) => (other.ratio > one.ratio ? other : one));

/** 125 % of the rated load, standing, at the worse terminal landing. 5.11.2.2.1. */
export const loadingCase = (masses: Masses): Worst =>
  largest([0, 1].map((place) => worstOf(pullAt(masses, 1.25 * masses.ratedLoad, place, 0), standing, place)));
const standing = { load: "125 %", direction: null } as const;

/**
 * Emergency braking, empty and full, both directions, at the worse terminal landing. 5.11.2.2.2.
 * @param retardation of the car, m/s²; at least 0.5
 */
export function brakingCase(masses: Masses, retardation: number): Worst {
  const found: Worst[] = [];
  for (const place of [0, 1]) {
    for (const load of ["empty", "full"] as const) {
      for (const direction of ["up", "down"] as const) {
        const acceleration = direction === "down" ? retardation : -retardation;
        const pull = pullAt(masses, load === "full" ? masses.ratedLoad : 0, place, acceleration);
        found.push(worstOf(pull, { load, direction }, place));
      }
    }
  }
  return largest(found);
}

export interface Stalled {
  /** T1/T2, the least of the two: the ropes must be able to slip here. */
  readonly ratio: number;
  readonly larger: number;
  readonly smaller: number;
  readonly rests: "car" | "counterweight";
}

/**
 * Car or counterweight stands on its buffer and the machine turns on; the car is empty. 5.11.2.2.3. On the side that
 * rests only the ropes still pull.
 */
export function stalledCase(masses: Masses): Stalled {
  const top = pullAt(masses, 0, 1, 0).car;
  const bottom = pullAt(masses, 0, 0, 0).counterweight;
  const ropes = masses.ropes * gravity;
  const rests = top < bottom ? "counterweight" : "car";
  const larger = Math.min(top, bottom);
  return { ratio: larger / ropes, larger, smaller: ropes, rests };
}

export interface PressureRequest {
  readonly groove: Groove;
  /** Force of all ropes on the car side, N. */
  readonly force: number;
  readonly ropes: number;
  /** Rope and sheave, m. */
  readonly ropeDiameter: number;
  readonly sheave: number;
}

/** p = T/(n d D) · 8 cos(beta/2)/(pi - beta - sin beta), V: T/(n d D) · 4.5/sin(gamma/2); Pa. Form from memory. */
export function ropePressure({ groove, force, ropes, ropeDiameter, sheave }: PressureRequest): number {
  const { form, beta, gamma } = groove;
  const factor =
    form === "round"
      ? (8 * Math.cos(beta / 2)) / (Math.PI - beta - Math.sin(beta))
      : 4.5 / Math.sin(gamma / 2);
  return (force / (ropes * ropeDiameter * sheave)) * factor;
}

/** (12.5 + 4 v)/(1 + v) N/mm² in Pa, v rope speed in m/s: EN 81-1:1985, no longer in EN 81-20 (published). */
export const pressureLimit = (ropeSpeed: number): number => ((12.5 + 4 * ropeSpeed) / (1 + ropeSpeed)) * 1e6;
