/** A stretch of car positions in millimetres about the landing, up positive. */
export interface Stretch {
  readonly from: number;
  readonly to: number;
}

/** Inputs of the sensors-and-magnet drawing, all in millimetres. */
export interface ZoneGeometry {
  readonly magnetLength: number;
  readonly sensorSpacing: number;
  /** The magnet's middle above (+) or below (−) its nominal place. */
  readonly magnetError: number;
}

export interface ZoneBar {
  readonly name: "upper" | "lower" | "both" | "either";
  /** None: never on. Two: on in two stretches with a gap between. */
  readonly stretches: readonly Stretch[];
}

/**
 * The car positions at which each signal is on: upper [e − L/2 − S/2, e + L/2 − S/2], lower
 * [e − L/2 + S/2, e + L/2 + S/2]; both is what they share, either what one or the other covers.
 */
export function zoneBars({ magnetLength, sensorSpacing, magnetError }: ZoneGeometry): ZoneBar[] {
  const half = magnetLength / 2;
  const shift = sensorSpacing / 2;
  return zoneBarsOf(
    { from: magnetError - half - shift, to: magnetError + half - shift },
    { from: magnetError - half + shift, to: magnetError + half + shift },
  );
}

/** The same from two stretches as they were measured; `null` is a signal that never came on. */
export function zoneBarsOf(upper: Stretch | null, lower: Stretch | null): ZoneBar[] {
  return [
    { name: "upper", stretches: upper ? [upper] : [] },
    { name: "lower", stretches: lower ? [lower] : [] },
    { name: "both", stretches: sharedStretch(upper, lower) },
    { name: "either", stretches: coveredStretches(upper, lower) },
  ];
}

function sharedStretch(a: Stretch | null, b: Stretch | null): Stretch[] {
  if (!a || !b) return [];
  const shared = { from: Math.max(a.from, b.from), to: Math.min(a.to, b.to) };
  return shared.from < shared.to ? [shared] : [];
}

function coveredStretches(a: Stretch | null, b: Stretch | null): Stretch[] {
  if (!a || !b) return a ? [a] : b ? [b] : [];
  const apart = a.to < b.from || b.to < a.from;
  return apart
    ? [a, b].sort((one, other) => one.from - other.from)
    : [{ from: Math.min(a.from, b.from), to: Math.max(a.to, b.to) }];
}

export function stretchesCentre(stretches: readonly Stretch[]): number | null {
  const first = stretches[0];
  const last = stretches.at(-1);
  return first && last ? (first.from + last.to) / 2 : null;
}
