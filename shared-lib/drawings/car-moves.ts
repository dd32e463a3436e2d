import type { ShaftLanding, ShaftSectionLift } from "./shaft-section.ts";
import { landingsByLevel } from "./shaft-section.ts";

/** The car in the picture may pass the terminal landings by this much where no final switch says more. */
const overrunMetres = 0.2;
const beyondFinalMetres = 0.1;
const hundredthPerMetre = 100;
const thousandthPerMetre = 1000;

/** Levels between which the drawn car can be moved, in metres: a little beyond the final switches, never below the pit. */
export function carRange(lift: ShaftSectionLift): { readonly lowest: number; readonly highest: number } {
  const landings = landingsByLevel(lift);
  const lowest = landings[0]?.levelMetres ?? 0;
  const highest = landings.at(-1)?.levelMetres ?? lowest;
  const down = Math.min(
    (lift.downFinalMetres ?? overrunMetres) + beyondFinalMetres,
    lift.pitDepthMetres ?? Number.POSITIVE_INFINITY,
  );
  const up = Math.min(
    (lift.upFinalMetres ?? overrunMetres) + beyondFinalMetres,
    lift.headroomMetres ?? Number.POSITIVE_INFINITY,
  );
  return { lowest: lowest - Math.max(0, down), highest: highest + Math.max(0, up) };
}

export function keptInRange(lift: ShaftSectionLift, levelMetres: number): number {
  const { lowest, highest } = carRange(lift);
  const kept = Math.min(highest, Math.max(lowest, Number.isFinite(levelMetres) ? levelMetres : lowest));
  return Math.round(kept * thousandthPerMetre) / thousandthPerMetre;
}

/** A dragged car goes in 10 mm, and rests on a sill that is within `snapMetres`. */
export function draggedLevel(lift: ShaftSectionLift, levelMetres: number, snapMetres: number): number {
  const near = landingsByLevel(lift).find(
    (landing) => Math.abs(landing.levelMetres - levelMetres) <= snapMetres,
  );
  return keptInRange(
    lift,
    near ? near.levelMetres : Math.round(levelMetres * hundredthPerMetre) / hundredthPerMetre,
  );
}

export interface CarKey {
  readonly key: string;
  readonly shift: boolean;
}

/**
 * Where a key takes the car: arrows 10 mm (with Shift 1 mm), Page keys by landing, Home and End to the terminal
 * landings. `null` where the key is not the car's.
 */
export function levelAfterKey(
  lift: ShaftSectionLift,
  levelMetres: number,
  { key, shift }: CarKey,
): number | null {
  const landings = landingsByLevel(lift);
  const step = shift ? 0.001 : 0.01;
  const tolerance = 0.0005;
  switch (key) {
    case "ArrowUp":
    case "ArrowRight":
      return keptInRange(lift, levelMetres + step);
    case "ArrowDown":
    case "ArrowLeft":
      return keptInRange(lift, levelMetres - step);
    case "PageUp":
      return (
        landings.find((landing) => landing.levelMetres > levelMetres + tolerance)?.levelMetres ?? levelMetres
      );
    case "PageDown":
      return (
        landings.findLast((landing) => landing.levelMetres < levelMetres - tolerance)?.levelMetres ??
        levelMetres
      );
    case "Home":
      return landings[0]?.levelMetres ?? levelMetres;
    case "End":
      return landings.at(-1)?.levelMetres ?? levelMetres;
    default:
      return null;
  }
}

/**
 * The landing meant by typed characters: its whole marking, else the only or lowest one that begins so.
 * "1" goes to landing 1 at once; a following "2" then goes to 12.
 */
export function landingTyped(lift: ShaftSectionLift, typed: string): ShaftLanding | null {
  const wanted = typed.toLowerCase();
  if (wanted === "") return null;
  const landings = landingsByLevel(lift);
  const exact = landings.find((landing) => landing.marking.toLowerCase() === wanted);
  return exact ?? landings.find((landing) => landing.marking.toLowerCase().startsWith(wanted)) ?? null;
}
