/**
 * Tripping speeds of the car's overspeed governor and strokes of buffers, EN 81-20:2020 5.6.2.2.1.1, 5.8.2 and
 * 5.2.5.6.1.1. SI: m, m/s.
 */

export const safetyGears = ["instantaneous", "captive roller", "progressive"] as const;
export type SafetyGear = (typeof safetyGears)[number];

export interface TrippingBounds {
  /** Inclusive: 1.15 v. */
  readonly least: number;
  /** Exclusive: the tripping speed is less than this. */
  readonly below: number;
}

/**
 * At least 1.15 v and less than: 0.8 m/s instantaneous, 1.0 m/s captive roller, 1.5 m/s progressive up to 1.0 m/s,
 * above that 1.25 v + 0.25/v. At speeds a gear may not be used for the bounds can leave no room.
 * @param speed rated speed, m/s, > 0
 */
export function trippingBounds(speed: number, gear: SafetyGear): TrippingBounds {
  const least = 1.15 * speed;
  if (gear === "instantaneous") return { least, below: 0.8 };
  if (gear === "captive roller") return { least, below: 1 };
  return { least, below: speed <= 1 ? 1.5 : 1.25 * speed + 0.25 / speed };
}

/** Rated speed up to which this safety gear may stop the car, m/s; null: any. */
export const fastestFor = (gear: SafetyGear): number | null => (gear === "progressive" ? null : 0.63);

export const bufferKinds = ["linear", "non-linear", "dissipation"] as const;
export type BufferKind = (typeof bufferKinds)[number];

/** Rated speed up to which this kind of buffer may be used, m/s; null: any. */
export const fastestOn = (buffer: BufferKind): number | null => (buffer === "dissipation" ? null : 1);

/** Above this rated speed the contact speed of a monitored slowdown may replace the rated one, m/s, exclusive. */
export const reducedStrokeAbove = 2.5;

export interface StrokeRequest {
  readonly buffer: BufferKind;
  /** Rated speed, m/s. */
  readonly speed: number;
  /** Speed at the buffer with monitored terminal slowdown, m/s; null: rated speed counts. */
  readonly contactSpeed: number | null;
}

/**
 * Least stroke, m: linear 0.135 v² and 65 mm; dissipation 0.0674 v², or of the contact speed and then 0.42 m.
 * @returns null for non-linear buffers, which are judged by how they brake and not by stroke
 */
export function leastStroke({ buffer, speed, contactSpeed }: StrokeRequest): number | null {
  if (buffer === "non-linear") return null;
  if (buffer === "linear") return Math.max(0.135 * speed ** 2, 0.065);
  return contactSpeed === null ? 0.0674 * speed ** 2 : Math.max(0.0674 * contactSpeed ** 2, 0.42);
}

/** Guided travel that must be left when the opposite buffer is compressed, m: 0.035 v². */
export const guidedTravel = (speed: number): number => 0.035 * speed ** 2;

/** Distance in which gravity stops a car that rises at 115 % of rated speed, m: (1.15 v)²/(2 g). */
export const gravityStop = (speed: number, gravity: number): number => (1.15 * speed) ** 2 / (2 * gravity);
