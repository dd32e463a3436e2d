/**
 * Logarithm of the gamma function and the two small functions by which densities with large shapes are computed
 * without cancellation. Stirling's series: Abramowitz and Stegun 6.1.41; the deviance form of the densities:
 * C. Loader, "Fast and accurate computation of binomial probabilities", 2000.
 */
const halfLogTwoPi = 0.5 * Math.log(2 * Math.PI);

/** Coefficients B_2k / (2k (2k - 1)) of Stirling's series. */
const stirling = [1 / 12, -1 / 360, 1 / 1260, -1 / 1680, 1 / 1188, -691 / 360_360, 1 / 156, -3617 / 122_400];

/** From here on the series is exact to the last digit of a double. */
const seriesFrom = 16;

function stirlingSeries(x: number): number {
  const square = 1 / (x * x);
  return stirling.reduceRight((sum, coefficient) => sum * square + coefficient, 0) / x;
}

/** @param x > 0. Absolute error below 1e-14 near the zeros at 1 and 2, relative below 1e-14 elsewhere. */
export function logGamma(x: number): number {
  if (!(x > 0)) throw new RangeError(`logGamma needs a positive number, not ${x}`);
  let shifted = x;
  let product = 1;
  while (shifted < seriesFrom) {
    product *= shifted;
    shifted += 1;
  }
  const value = (shifted - 0.5) * Math.log(shifted) - shifted + halfLogTwoPi + stirlingSeries(shifted);
  return product === 1 ? value : value - Math.log(product);
}

/** logGamma(x) minus its leading part (x - 1/2) ln x - x + ln(2 pi)/2. */
export function stirlingError(x: number): number {
  if (x >= seriesFrom) return stirlingSeries(x);
  return logGamma(x) - ((x - 0.5) * Math.log(x) - x + halfLogTwoPi);
}

/** r - 1 - ln r for r > 0, exact also near 1. */
export function deviance(r: number): number {
  const m = r - 1;
  if (Math.abs(m) > 0.3) return m - Math.log(r);
  // With r = 1 + m: ln(1 + m) = 2 artanh(m / (2 + m)), so that m - ln(1 + m) = m s - 2 (s³/3 + s⁵/5 + ...) with s = m / (2 + m).
  const s = m / (2 + m);
  const square = s * s;
  let sum = 0;
  for (let power = 29; power >= 3; power -= 2) sum = sum * square + 1 / power;
  return m * s - 2 * s * square * sum;
}
