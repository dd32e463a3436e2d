import { standardGravity } from "./drive-physics.ts";

/** Car that leaves the landing by itself with open doors. SI: m, m/s, m/s², s, kg. Derived. */
export interface Runaway {
  /** Natural acceleration without motor and brake, > 0. */
  readonly acceleration: number;
  /** Way from the landing to the point where the movement is detected, >= 0. */
  readonly detection: number;
  /** Time from detection to the beginning of braking, >= 0. */
  readonly reaction: number;
  /** Retardation while the stopping element acts, load included, > 0. */
  readonly braking: number;
}

export interface RunawayStop {
  /** Speed when detected, √(2 a d₀). */
  readonly speedDetected: number;
  /** Way during the reaction time, v₁ t + ½ a t². */
  readonly reactionTravel: number;
  /** Speed when braking begins: the largest. */
  readonly speedBraked: number;
  /** Way while braking, v₂²/(2 a_b). */
  readonly brakingTravel: number;
  readonly total: number;
  readonly time: number;
}

export function stopRunaway({ acceleration, detection, reaction, braking }: Runaway): RunawayStop {
  const speedDetected = Math.sqrt(2 * acceleration * detection);
  const reactionTravel = speedDetected * reaction + (acceleration * reaction ** 2) / 2;
  const speedBraked = speedDetected + acceleration * reaction;
  const brakingTravel = speedBraked ** 2 / (2 * braking);
  return {
    speedDetected,
    reactionTravel,
    speedBraked,
    brakingTravel,
    total: detection + reactionTravel + brakingTravel,
    time: speedBraked / acceleration + speedBraked / braking,
  };
}

/** Distance from the landing a time after the movement began; after the stop the car stands. */
export function runawayAt(runaway: Runaway, time: number): number {
  const stop = stopRunaway(runaway);
  const untilBraked = stop.speedBraked / runaway.acceleration;
  if (time <= untilBraked) return (runaway.acceleration * time ** 2) / 2;
  if (time >= stop.time) return stop.total;
  const after = time - untilBraked;
  const braked = stop.speedBraked * after - (runaway.braking * after ** 2) / 2;
  return runaway.detection + stop.reactionTravel + braked;
}

export interface Masses {
  readonly car: number;
  readonly load: number;
  readonly counterweight: number;
}

/**
 * (car + load − counterweight) g over the sum of the masses, m/s²: above 0 the car goes down, below 0 up. Without
 * friction and rotating parts, which make it smaller; ropes are not counted.
 */
export function naturalAcceleration({ car, load, counterweight }: Masses): number {
  return ((car + load - counterweight) * standardGravity) / (car + load + counterweight);
}

export interface Entrance {
  /** Clear height of the door, m. */
  readonly doorHeight: number;
  /** Height of the vertical part of the car apron, m. */
  readonly apronHeight: number;
}

/** Largest travel allowed from the landing, m; the numbers of EN 81-20 5.6.7.5 are from memory. */
export function allowedTravel({ doorHeight, apronHeight }: Entrance): { up: number; down: number } {
  const lintel = doorHeight - 1;
  return { up: Math.min(1.2, 0.2 + apronHeight, lintel), down: Math.min(1.2, lintel) };
}
