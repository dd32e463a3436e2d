/** A step of 1, 2 or 5 times a power of ten, so that at most `most` steps span the range. */
export function niceStep(range: number, most: number): number {
  if (!(range > 0) || !Number.isFinite(range)) return 1;
  const rough = range / Math.max(1, most);
  const power = 10 ** Math.floor(Math.log10(rough));
  for (const factor of [1, 2, 5, 10]) {
    if (factor * power >= rough * (1 - 1e-9)) return factor * power;
  }
  return 10 * power;
}

/** Round values from `low` to `high` inclusive, at most `most + 1` of them; ends are widened to whole steps. */
export function axisSteps(low: number, high: number, most = 5): number[] {
  const [bottom, top] = low <= high ? [low, high] : [high, low];
  // Values that differ by floating-point dust are one value; an axis for the dust would have no room for digits.
  const size = Math.max(Math.abs(top), Math.abs(bottom), 1);
  const range = top - bottom > size * 1e-9 ? top - bottom : size;
  const step = niceStep(range, most);
  const first = Math.floor(bottom / step + 1e-9);
  const last = Math.max(first + 1, Math.ceil(top / step - 1e-9));
  return Array.from({ length: last - first + 1 }, (_, index) => roundToStep((first + index) * step, step));
}

function roundToStep(value: number, step: number): number {
  const digits = Math.max(0, -Math.floor(Math.log10(step)) + 1);
  return Number(value.toFixed(Math.min(12, digits)));
}

/** A number as it is written on a drawing: real minus sign, no negative nought. */
export function drawnNumber(value: number, decimals: number): string {
  const text = Math.abs(value).toFixed(decimals);
  return value < 0 && Number(text) !== 0 ? `−${text}` : text;
}

/** The same with its sign always written; nought is ±. */
export function signedNumber(value: number, decimals: number): string {
  const text = drawnNumber(value, decimals);
  if (text.startsWith("−")) return text;
  return Number(text) === 0 ? `±${text}` : `+${text}`;
}

/** Decimals that a step needs to be told apart from its neighbours. */
export function decimalsOfStep(step: number): number {
  return step > 0 ? Math.max(0, Math.min(6, -Math.floor(Math.log10(step) + 1e-9))) : 0;
}
