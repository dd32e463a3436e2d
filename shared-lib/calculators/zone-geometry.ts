/**
 * Geometry of two zone sensors, upper A over lower B with spacing S, and one magnet of length L centred e above its
 * nominal place. x is the car's position relative to the landing, up positive; a sensor is on while it is within
 * the magnet. All lengths in m, times in s, speeds in m/s. Derived.
 */
export interface Zone {
  readonly from: number;
  readonly to: number;
}

export interface Zones {
  readonly upper: Zone;
  readonly lower: Zone;
  /** Both on; null where the two zones only touch or leave a gap. */
  readonly both: Zone | null;
  /** Either on; where there is a gap (S > L) it spans the gap, too. */
  readonly either: Zone;
}

export interface ZoneSizes {
  readonly upperLength: number;
  readonly lowerLength: number;
  readonly spacing: number;
  /** Centring error e; positive: too high. */
  readonly centre: number;
  readonly sensorsOn: "car" | "well";
}

const around = (middle: number, length: number): Zone => ({
  from: middle - length / 2,
  to: middle + length / 2,
});

export const lengthOf = (zone: Zone): number => zone.to - zone.from;

/**
 * Sensors on the car: A is on for x in [e - L/2 - S/2, e + L/2 - S/2], B for the same moved up by S. With the
 * sensors in the well and the magnet on the car the two change places.
 */
export function zonesOf(sizes: ZoneSizes): Zones {
  const towards = sizes.sensorsOn === "car" ? -1 : 1;
  const upper = around(sizes.centre + (towards * sizes.spacing) / 2, sizes.upperLength);
  const lower = around(sizes.centre - (towards * sizes.spacing) / 2, sizes.lowerLength);
  const from = Math.max(upper.from, lower.from);
  const to = Math.min(upper.to, lower.to);
  return {
    upper,
    lower,
    both: to - from > 1e-9 ? { from, to } : null,
    either: { from: Math.min(upper.from, lower.from), to: Math.max(upper.to, lower.to) },
  };
}

/** Largest distance from the landing at which a zone is still on: (L + S)/2 + |e| for either, (L - S)/2 + |e| for both. */
export const reachOf = (zone: Zone): number => Math.max(Math.abs(zone.from), Math.abs(zone.to));

/** e = (e_up + e_down)/2: the delay of the signals drops out of the two directions. */
export const centreFromRuns = (centreUp: number, centreDown: number): number => (centreUp + centreDown) / 2;

/** tau = (e_up - e_down)/(2 v): total delay of a signal at check speed v > 0. */
export const delayFromRuns = (centreUp: number, centreDown: number, speed: number): number =>
  (centreUp - centreDown) / (2 * speed);
