import { spreadLabels } from "#shared-lib/drawings/spread-labels.ts";
import { letteringWidth } from "#shared-lib/drawings/text-width.ts";
import { type UnitSystem, writeNumber } from "#shared-lib/quantities.ts";
import { shownUnit } from "./unit-words.ts";
import type { ZoneBarsDrawing } from "./zone-pictures.ts";

export interface BarsPicture {
  readonly width: number;
  readonly height: number;
  readonly textSize: number;
  readonly left: number;
  readonly right: number;
  readonly zeroY: number;
  readonly sign: string;
  readonly bars: readonly {
    readonly name: string;
    readonly x: number;
    readonly top: number;
    readonly bottom: number;
    readonly topWords: string;
    readonly bottomWords: string;
    /** A number that would stand on a limit's line stands beside its bar. */
    readonly topBeside: boolean;
    readonly bottomBeside: boolean;
    readonly lengthWords: string;
    readonly unlocks: boolean;
  }[];
  /** Level, limits and centre, each as a line across with its words at the right end. */
  readonly lines: readonly {
    readonly kind: "level" | "limit" | "centre";
    readonly y: number;
    readonly wordY: number;
    readonly words: string;
    readonly outside: boolean;
  }[];
}

export const barWidth = 20;

interface Line {
  readonly kind: BarsPicture["lines"][number]["kind"];
  readonly at: number;
  readonly words: string;
  readonly outside: boolean;
}

function linesOf(drawing: ZoneBarsDrawing): readonly Line[] {
  const limits = drawing.limits.map((limit): Line => ({ kind: "limit", ...limit, outside: false }));
  return [
    { kind: "level", at: 0, words: "level", outside: false },
    ...limits,
    ...(drawing.centre === null ? [] : [{ kind: "centre" as const, ...drawing.centre }]),
  ];
}

/** Bars of car positions on one height axis, up positive, in the person's unit. */
export function barsPicture(
  drawing: ZoneBarsDrawing,
  given: number,
  textSize: number,
  system: UnitSystem,
): BarsPicture {
  const unit = shownUnit("mm", 0, system);
  const write = (value: number): string => writeNumber(unit.of(value), unit.digits, true);
  const places = [
    ...drawing.bars.flatMap((bar) => [bar.from, bar.to]),
    ...drawing.limits.map((limit) => limit.at),
  ].filter(Number.isFinite);
  const reach = Math.max(1e-6, ...places.map(Math.abs));
  const half = Math.max(110, Math.min(150, given / 4.4));
  const zeroY = textSize * 3.4 + half;
  const yOf = (value: number): number => zeroY - (Number.isFinite(value) ? value / reach : 0) * half;
  const lines = linesOf(drawing);
  const wordYs = spreadLabels(
    lines.map((line) => ({ anchor: yOf(line.at), extent: textSize * 1.25 })),
    textSize * 2,
    zeroY + half + textSize,
  );
  const meetsLimit = (y: number): boolean =>
    drawing.limits.some((limit) => Math.abs(yOf(limit.at) - y) < textSize * 0.8);
  const wordsWidth = Math.max(...lines.map((line) => letteringWidth(line.words, textSize, true)));
  const left = 6;
  const step = Math.max(
    textSize * 5,
    Math.min(100, (given - wordsWidth - 40) / Math.max(1, drawing.bars.length)),
  );
  const right = left + step * drawing.bars.length + 10;
  return {
    width: Math.max(given, Math.ceil(right + 16 + wordsWidth)),
    height: Math.ceil(zeroY + half + textSize * 4.4),
    textSize,
    left,
    right,
    zeroY,
    sign: unit.sign,
    bars: drawing.bars.map((bar, index) => ({
      name: bar.name,
      x: left + step * (index + 0.5) - barWidth / 2,
      top: yOf(bar.to),
      bottom: yOf(bar.from),
      topWords: write(bar.to),
      bottomWords: write(bar.from),
      topBeside: meetsLimit(yOf(bar.to) - textSize * 0.7),
      bottomBeside: meetsLimit(yOf(bar.from) + textSize * 0.7),
      lengthWords: `${writeNumber(unit.of(bar.length), unit.digits)} long`,
      unlocks: bar.unlocks,
    })),
    lines: lines.map((line, index) => ({
      kind: line.kind,
      y: yOf(line.at),
      wordY: wordYs[index] ?? yOf(line.at),
      words: line.words,
      outside: line.outside,
    })),
  };
}

/** What a reader hears instead of the picture. */
export function barsSentence(drawing: ZoneBarsDrawing, system: UnitSystem): string {
  const unit = shownUnit("mm", 0, system);
  const write = (value: number): string => writeNumber(unit.of(value), unit.digits, true);
  const bars = drawing.bars.map(
    (bar) => `${bar.name} from ${write(bar.from)} to ${write(bar.to)} ${unit.sign}`,
  );
  return `${drawing.title}: ${[...bars, ...(drawing.centre ? [drawing.centre.words] : [])].join("; ")}.`;
}
