import { describe, expect, test } from "vitest";
import { poissonInterval, rateRatioInterval } from "#shared-lib/statistics/poisson-interval.ts";

describe("Garwood's limits at 95 %; formula published, values recomputed with R qchisq", () => {
  test.each([
    [0, 0, 3.6888795],
    [1, 0.0253178, 5.5716434],
    [2, 0.2422093, 7.2246877],
    [3, 0.6186721, 8.7672731],
    [5, 1.6234864, 11.6683321],
    [10, 4.7953887, 18.390356],
    [20, 12.2165196, 30.8883779],
    [50, 37.1109637, 65.9187668],
    [100, 81.3639913, 121.6267938],
  ])("%d counted: %d to %d", (count, lower, upper) => {
    const found = poissonInterval(count, 0.95);
    expect(found.lower).toBeCloseTo(lower, 6);
    expect(found.upper).toBeCloseTo(upper, 6);
  });

  test("37 counted, by adding up the Poisson probabilities themselves", () => {
    const { lower, upper } = poissonInterval(37, 0.95);
    const atMost = (count: number, mean: number): number => {
      let term = Math.exp(-mean);
      let sum = term;
      for (let k = 1; k <= count; k += 1) {
        term *= mean / k;
        sum += term;
      }
      return sum;
    };
    expect(1 - atMost(36, lower)).toBeCloseTo(0.025, 9);
    expect(atMost(37, upper)).toBeCloseTo(0.025, 9);
  });
});

test("Welsh nickel workers: 137 in 24.19893, rate 5.661407, 4.753125 to 6.692709; status: published (R poisson.test)", () => {
  const { lower, upper } = poissonInterval(137, 0.95);
  expect(lower / 24.19893).toBeCloseTo(4.753125, 6);
  expect(upper / 24.19893).toBeCloseTo(6.692709, 6);
});

describe("ratio of two rates; status: published", () => {
  test("Fay: 2 in 17877 against 9 in 16660, 0.02177406 to 1.0005491", () => {
    const found = rateRatioInterval({ count: 2, exposure: 17_877 }, { count: 9, exposure: 16_660 }, 0.95);
    expect(found?.lower).toBeCloseTo(0.02177406, 8);
    expect(found?.upper).toBeCloseTo(1.0005491, 7);
  });

  test("R poisson.test: 11 in 800 against 21 in 3011, 0.8584264 to 4.2772659", () => {
    const found = rateRatioInterval({ count: 11, exposure: 800 }, { count: 21, exposure: 3011 }, 0.95);
    expect(found?.lower).toBeCloseTo(0.8584264, 7);
    expect(found?.upper).toBeCloseTo(4.2772659, 7);
  });

  test("nothing counted: no ratio; nothing before: no upper end", () => {
    expect(rateRatioInterval({ count: 0, exposure: 1 }, { count: 0, exposure: 1 }, 0.95)).toBeNull();
    expect(rateRatioInterval({ count: 2, exposure: 1 }, { count: 0, exposure: 1 }, 0.95)?.upper).toBeNull();
  });
});
