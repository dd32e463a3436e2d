/** An interval on a shared axis: ticks at its ends, heavy bar at the estimate, circle at what was counted. */
export interface IntervalInput {
  readonly low: number;
  readonly high: number;
  readonly estimate: number;
  readonly counted?: number;
  /** The company's mean: a thin line over all rows. */
  readonly mean?: number;
  readonly axis: { readonly from: number; readonly to: number };
}

export interface IntervalLayout {
  readonly y: number;
  readonly low: number;
  readonly high: number;
  readonly estimate: number;
  readonly counted: number | null;
  readonly mean: number | null;
}

const margin = 10;

/** Places in pixels; what lies outside the axis stands at its end. */
export function intervalLayout(input: IntervalInput, width: number, height: number): IntervalLayout {
  const span = input.axis.to - input.axis.from;
  const xOf = (value: number) => {
    const share = span > 0 && Number.isFinite(value) ? (value - input.axis.from) / span : 0;
    return margin + Math.min(1, Math.max(0, share)) * (width - 2 * margin);
  };
  return {
    y: height / 2,
    low: xOf(Math.min(input.low, input.high)),
    high: xOf(Math.max(input.low, input.high)),
    estimate: xOf(input.estimate),
    counted: input.counted === undefined ? null : xOf(input.counted),
    mean: input.mean === undefined ? null : xOf(input.mean),
  };
}
