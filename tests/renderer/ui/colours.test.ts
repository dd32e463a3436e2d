import { readFileSync } from "node:fs";
import { describe, expect, test } from "vitest";

// Contrast after WCAG 2.2 and distance between the meaningful colours, for usual sight and for protanopia,
// deuteranopia and tritanopia simulated after Machado, Oliveira and Fernandes 2009 (severity 1.0, linear RGB).

type Triple = readonly [number, number, number];
type Matrix = readonly [Triple, Triple, Triple];

const css = readFileSync(new URL("../../../renderer/styles/tokens.css", import.meta.url), "utf8");

function block(start: string): Map<string, string> {
  const text = css.split(start)[1]?.split("}")[0] ?? "";
  return new Map([...text.matchAll(/--([\w-]+):\s*(#[0-9a-f]{6})/gi)].map((m) => [m[1] ?? "", m[2] ?? ""]));
}

function linear(theme: Map<string, string>, name: string): Triple {
  const hex = theme.get(name);
  if (hex === undefined) throw new Error(`tokens.css has no colour ${name}`);
  const channel = (start: number) => {
    const value = Number.parseInt(hex.slice(start, start + 2), 16) / 255;
    return value <= 0.04045 ? value / 12.92 : ((value + 0.055) / 1.055) ** 2.4;
  };
  return [channel(1), channel(3), channel(5)];
}

const sights: { readonly [name: string]: Matrix } = {
  usual: [
    [1, 0, 0],
    [0, 1, 0],
    [0, 0, 1],
  ],
  protanopia: [
    [0.152286, 1.052583, -0.204868],
    [0.114503, 0.786281, 0.099216],
    [-0.003882, -0.048116, 1.051998],
  ],
  deuteranopia: [
    [0.367322, 0.860646, -0.227968],
    [0.280085, 0.672501, 0.047413],
    [-0.01182, 0.04294, 0.968881],
  ],
  tritanopia: [
    [1.255528, -0.076749, -0.178779],
    [-0.078411, 0.930809, 0.147602],
    [0.004733, 0.691367, 0.3039],
  ],
};

function seen(rgb: Triple, matrix: Matrix): Triple {
  const row = (k: Triple) => Math.min(1, Math.max(0, k[0] * rgb[0] + k[1] * rgb[1] + k[2] * rgb[2]));
  return [row(matrix[0]), row(matrix[1]), row(matrix[2])];
}

function contrast(a: Triple, b: Triple): number {
  const luminance = ([r, g, blue]: Triple) => 0.2126 * r + 0.7152 * g + 0.0722 * blue;
  const [first, second] = [luminance(a), luminance(b)];
  return (Math.max(first, second) + 0.05) / (Math.min(first, second) + 0.05);
}

/** Björn Ottosson's OKLab. */
function oklab([r, g, b]: Triple): Triple {
  const l = Math.cbrt(0.4122214708 * r + 0.5363325363 * g + 0.0514459929 * b);
  const m = Math.cbrt(0.2119034982 * r + 0.6806995451 * g + 0.1073969566 * b);
  const s = Math.cbrt(0.0883024619 * r + 0.2817188376 * g + 0.6299787005 * b);
  return [
    0.2104542553 * l + 0.793617785 * m - 0.0040720468 * s,
    1.9779984951 * l - 2.428592205 * m + 0.4505937099 * s,
    0.0259040371 * l + 0.7827717662 * m - 0.808675766 * s,
  ];
}

/** Euclidean in OKLab, times 100: about 2 is just noticeable, 12 is plainly another colour. */
function distance(a: Triple, b: Triple): number {
  const [x, y] = [oklab(a), oklab(b)];
  return 100 * Math.hypot(x[0] - y[0], x[1] - y[1], x[2] - y[2]);
}

const grounds = ["paper", "sheet", "hover", "pencil-wash", "construction-wash"] as const;
const pairs: readonly (readonly [string, string, number])[] = [
  ...grounds.map((ground) => ["ink", ground, 7] as const),
  ...grounds.map((ground) => ["ink-soft", ground, 4.5] as const),
  ...["paper", "sheet", "hover", "pencil-wash"].map((ground) => ["pencil", ground, 4.5] as const),
  ["on-pencil", "pencil", 4.5],
  ["on-ink", "ink", 7],
  ...["paper", "sheet", "construction-wash"].map((ground) => ["construction", ground, 4.5] as const),
  ...["paper", "sheet", "hover"].map((ground) => ["edge", ground, 3] as const),
];
const apart = [
  ["pencil", "ink"],
  ["pencil", "construction"],
  ["pencil", "edge"],
  ["pencil", "paper"],
  ["construction", "ink"],
] as const;
const leastDistance = 12;

describe.each(["light", "dark"])("%s theme", (name) => {
  const theme = block(`/* theme: ${name} */`);

  test.each(pairs)("%s on %s has a contrast of %d", (front, back, least) => {
    for (const [sight, matrix] of Object.entries(sights)) {
      const ratio = contrast(seen(linear(theme, front), matrix), seen(linear(theme, back), matrix));
      const needed = sight === "usual" ? least : Math.min(least, 4.5);
      expect(ratio, sight).toBeGreaterThanOrEqual(needed);
    }
  });

  test.each(apart)("%s differs from %s for every kind of sight", (first, second) => {
    for (const [sight, matrix] of Object.entries(sights)) {
      const apartBy = distance(seen(linear(theme, first), matrix), seen(linear(theme, second), matrix));
      expect(apartBy, sight).toBeGreaterThanOrEqual(leastDistance);
    }
  });
});

test("the dark theme chosen by hand is the dark theme of the system", () => {
  const byHand = block(':root[data-theme="dark"] {');
  expect(byHand.size).toBeGreaterThan(10);
  expect(byHand).toEqual(block("/* theme: dark */"));
});
