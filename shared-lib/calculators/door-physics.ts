/** Closing energy of power-operated sliding doors. SI: m, m/s, kg, J, s. Derived: E = ½ m v². */

export const doorArrangements = [
  "centre-opening",
  "side-opening",
  "side-telescopic",
  "centre-telescopic",
] as const;
export type DoorArrangement = (typeof doorArrangements)[number];

export const isTelescopic = (arrangement: DoorArrangement): boolean => arrangement.endsWith("telescopic");
const isCentre = (arrangement: DoorArrangement): boolean => arrangement.startsWith("centre");

/**
 * Way of the leading panel without the ends: 25 mm at each end for centre-closing, 50 mm for side-closing doors
 * (EN 81-20:2020 5.3.6.2.2.1). Opening width W: W/2 − 50 mm, or W − 100 mm.
 * @param width clear opening, m, > 0.1
 */
export const reducedTravel = (arrangement: DoorArrangement, width: number): number =>
  isCentre(arrangement) ? width / 2 - 0.05 : width - 0.1;

/**
 * Mass referred to the leading panel: of a two-speed door the slow panels run at half the speed, so a quarter of their
 * mass counts. Both halves of a centre-opening door count, each at its own panel speed.
 */
export const referredMass = (fast: number, slow: number): number => fast + slow / 4;

/** ½ m v², J */
export const closingEnergy = (mass: number, averageSpeed: number): number => (mass * averageSpeed ** 2) / 2;

/** √(2 E/m), m/s */
export const fastestClosing = (mass: number, energy: number): number => Math.sqrt((2 * energy) / mass);

/** s √(m/(2 E)), s @param travel the reduced one, m */
export const shortestClosing = (mass: number, energy: number, travel: number): number =>
  travel / fastestClosing(mass, energy);
