import { signedNumber } from "./axis-steps.ts";
import { letteringWidth } from "./text-width.ts";
import type { Stretch, ZoneBar, ZoneGeometry } from "./zone-bars.ts";
import { stretchesCentre, zoneBars } from "./zone-bars.ts";

export interface ZoneBarsInput extends ZoneGeometry {
  /** Half of the unlocking zone that applies: 200 or 350 mm (EN 81-20:2020 5.3.8.1). */
  readonly limit: number;
  /** Which signals the lift's record says unlock. */
  readonly unlocksWith: "both" | "either";
  /** The site's own tolerance for the centre, plus or minus; null: the centre stands without a verdict. */
  readonly centreTolerance: number | null;
  /** Written at the chain line: "level 3, +8.80 m". */
  readonly levelWords: string;
  /** What was measured, where that is what is to be drawn on the right. */
  readonly measured?: readonly ZoneBar[];
}

export interface PlacedText {
  readonly text: string;
  readonly x: number;
  readonly y: number;
  readonly align: "start" | "middle" | "end";
}

export interface PlacedBar {
  readonly name: ZoneBar["name"];
  readonly x: number;
  readonly centreX: number;
  readonly pieces: readonly { readonly top: number; readonly bottom: number }[];
  readonly ends: readonly PlacedText[];
  readonly centreY: number | null;
  readonly foot: string;
  readonly unlocks: boolean;
}

export interface ZoneBarsLayout {
  readonly width: number;
  readonly height: number;
  readonly textSize: number;
  readonly pixelsPerMillimetre: number;
  /** Middle height of the well on the left and of the bars on the right; one and the same where they stand side by side. */
  readonly wellZeroY: number;
  readonly barsZeroY: number;
  readonly wellTop: number;
  readonly wellBottom: number;
  readonly barsLeft: number;
  readonly barsRight: number;
  readonly sideBySide: boolean;
  readonly bars: readonly PlacedBar[];
  readonly limitYs: { readonly upper: number; readonly lower: number };
  readonly centre: { readonly value: number; readonly outside: boolean } | null;
}

const barWidth = 20;
const wellWidth = 326;
const leastBarStep = 66;

export function zoneBarsLayout(input: ZoneBarsInput, width: number, textSize: number): ZoneBarsLayout {
  const bars = input.measured ?? zoneBars(input);
  const limitWidth = letteringWidth(`−${input.limit} limit`, textSize) + 10;
  const scale = textSize / 14;
  const needed = leastBarStep * 4 * scale + limitWidth;
  const sideBySide = width >= wellWidth * scale + needed;
  const reach = furthest(bars, input);
  const half = Math.max(112, Math.min(150, width / 4.4));
  const pixelsPerMillimetre = half / reach;
  const head = textSize * 1.9;
  const foot = textSize * 2.9;
  const wellTop = head;
  const wellZeroY = wellTop + half + 10;
  const wellBottom = wellZeroY + half + 10;
  const barsZeroY = sideBySide ? wellZeroY : wellBottom + head + textSize + half + 10;
  const barsLeft = sideBySide ? Math.max(wellWidth * scale, width * 0.49) : 6;
  const barsRight = Math.max(barsLeft + leastBarStep * 4 * scale, width - limitWidth);
  const yOf = (value: number) => barsZeroY - value * pixelsPerMillimetre;
  const step = Math.min(90 * scale, (barsRight - barsLeft) / 4);
  const centre = centreOf(bars, input);
  return {
    width: Math.max(width, barsRight + limitWidth),
    height: Math.ceil(barsZeroY + half + 10 + foot),
    textSize,
    pixelsPerMillimetre,
    wellZeroY,
    barsZeroY,
    wellTop,
    wellBottom,
    barsLeft,
    barsRight,
    sideBySide,
    bars: bars.map((bar, index) =>
      placedBar(bar, {
        centreX: barsLeft + step * (index + 0.4),
        yOf,
        input,
        textSize,
        last: index === bars.length - 1,
      }),
    ),
    limitYs: { upper: yOf(input.limit), lower: yOf(-input.limit) },
    centre,
  };
}

function furthest(bars: readonly ZoneBar[], input: ZoneBarsInput): number {
  const ends = bars.flatMap((bar) =>
    bar.stretches.flatMap((stretch) => [Math.abs(stretch.from), Math.abs(stretch.to)]),
  );
  const magnet = Math.abs(input.magnetError) + input.magnetLength / 2;
  const far = Math.max(input.limit, magnet, input.sensorSpacing, ...ends.filter(Number.isFinite));
  return Number.isFinite(far) && far > 0 ? far : 200;
}

function centreOf(bars: readonly ZoneBar[], input: ZoneBarsInput): ZoneBarsLayout["centre"] {
  const own = bars.find((bar) => bar.name === input.unlocksWith);
  const value = own ? stretchesCentre(own.stretches) : null;
  if (value === null) return null;
  return { value, outside: input.centreTolerance !== null && Math.abs(value) > input.centreTolerance };
}

interface BarPlace {
  readonly centreX: number;
  readonly yOf: (value: number) => number;
  readonly input: ZoneBarsInput;
  readonly textSize: number;
  readonly last: boolean;
}

function placedBar(bar: ZoneBar, place: BarPlace): PlacedBar {
  const { centreX, yOf } = place;
  const centre = stretchesCentre(bar.stretches);
  const long = bar.stretches.reduce((sum, stretch) => sum + stretch.to - stretch.from, 0);
  return {
    name: bar.name,
    x: centreX - barWidth / 2,
    centreX,
    pieces: bar.stretches.map((stretch) => ({ top: yOf(stretch.to), bottom: yOf(stretch.from) })),
    ends: endTexts(bar.stretches, place),
    centreY: centre === null ? null : yOf(centre),
    foot: bar.stretches.length === 0 ? "never on" : `${Math.round(long)} long`,
    unlocks: bar.name === place.input.unlocksWith,
  };
}

/** The numbers at a bar's ends; where one would stand on a limit line it goes beside the bar instead. */
function endTexts(stretches: readonly Stretch[], place: BarPlace): PlacedText[] {
  const first = stretches[0];
  const last = stretches.at(-1);
  if (!first || !last) return [];
  const { centreX, yOf, input, textSize } = place;
  const limits = [yOf(input.limit), yOf(-input.limit)];
  const text = (value: number, outward: 1 | -1): PlacedText => {
    const end = yOf(value);
    const middle = end + outward * textSize * 0.75;
    const meetsLimit = limits.some((y) => Math.abs(y - middle) < textSize * 0.75);
    const words = signedNumber(Math.round(value), 0);
    if (!meetsLimit) return { text: words, x: centreX, y: middle + textSize * 0.36, align: "middle" };
    const inside = end - outward * textSize * 0.75 + textSize * 0.36;
    return place.last
      ? { text: words, x: centreX - barWidth / 2 - 6, y: inside, align: "end" }
      : { text: words, x: centreX + barWidth / 2 + 6, y: inside, align: "start" };
  };
  return [text(last.to, -1), text(first.from, 1)];
}

/** What a reader hears instead of the picture. */
export function zoneBarsSentence(input: ZoneBarsInput): string {
  const error = Math.round(input.magnetError);
  const where = error === 0 ? "at its nominal place" : `${Math.abs(error)} mm ${error < 0 ? "low" : "high"}`;
  const said = (input.measured ?? zoneBars(input))
    .filter((bar) => bar.name === "both" || bar.name === "either")
    .map((bar) => `${bar.name === "both" ? "both sensors" : "either"} ${stretchWords(bar.stretches)}`);
  return `Magnet ${input.magnetLength} mm long, ${where}; ${said.join(", ")}; limit ${input.limit} mm.`;
}

function stretchWords(stretches: readonly Stretch[]): string {
  const word = (value: number) => `${value < 0 ? "minus" : "plus"} ${Math.abs(Math.round(value))}`;
  if (stretches.length === 0) return "never on";
  return `on from ${stretches.map((stretch) => `${word(stretch.from)} to ${word(stretch.to)}`).join(" and from ")} mm`;
}
