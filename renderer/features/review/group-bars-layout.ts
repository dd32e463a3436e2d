import { letteringWidth } from "#shared-lib/drawings/text-width.ts";

export interface GroupBar {
  readonly id: string;
  readonly title: string;
  readonly count: number;
  /** Null: not on record. */
  readonly yearBefore: number | null;
}

export interface GroupBarsLayout {
  readonly width: number;
  readonly height: number;
  readonly textSize: number;
  /** Where zero stands. */
  readonly left: number;
  readonly top: number;
  readonly barHeight: number;
  readonly ticks: readonly { readonly x: number; readonly words: string }[];
  readonly rows: readonly {
    readonly bar: GroupBar;
    readonly top: number;
    readonly height: number;
    /** Length of the bars in pixels. */
    readonly now: number;
    readonly before: number | null;
    /** Begin of the numbers behind the bars. */
    readonly nowWords: { readonly x: number; readonly y: number };
    readonly beforeWords: { readonly x: number; readonly y: number };
  }[];
}

/** Two bars a row from one zero: this time above, the year before below. Pixels for the width and text size given. */
export function groupBarsLayout(bars: readonly GroupBar[], given: number, textSize: number): GroupBarsLayout {
  const names = bars.map(({ title }) => letteringWidth(title, textSize));
  const left = Math.min(Math.ceil(Math.max(0, ...names)) + 12, Math.max(110, Math.floor(given * 0.45)));
  const most = Math.max(1, ...bars.flatMap(({ count, yearBefore }) => [count, yearBefore ?? 0]));
  const numberRoom = Math.ceil(letteringWidth(String(most), textSize, true)) + 12;
  const room = Math.max(100, given - left - numberRoom);
  const step = wholeStep(most);
  const end = Math.ceil(most / step) * step;
  const lengthOf = (count: number): number => Math.round((count / end) * room * 10) / 10;
  const height = Math.max(44, Math.ceil(textSize * 2.8));
  const barHeight = Math.round(textSize * 0.8);
  const top = Math.ceil(textSize * 1.6);
  return {
    width: Math.ceil(left + room + numberRoom),
    height: top + bars.length * height + 4,
    textSize,
    left,
    top,
    barHeight,
    ticks: Array.from({ length: end / step + 1 }, (_, index) => ({
      x: left + lengthOf(index * step),
      words: String(index * step),
    })),
    rows: bars.map((bar, index) => {
      const rowTop = top + index * height;
      const now = lengthOf(bar.count);
      const before = bar.yearBefore === null ? null : lengthOf(bar.yearBefore);
      const middle = rowTop + height / 2;
      const nowY = before === null ? middle + textSize * 0.36 : middle - 2;
      return {
        bar,
        top: rowTop,
        height,
        now,
        before,
        nowWords: { x: left + now + 6, y: nowY },
        beforeWords: { x: left + (before ?? 0) + 6, y: middle + textSize * 0.9 },
      };
    }),
  };
}

/** Whole steps of 1, 2 or 5 times a power of ten, at most five of them. */
function wholeStep(most: number): number {
  for (let power = 1; ; power *= 10) {
    for (const factor of [1, 2, 5]) if (most / (factor * power) <= 5) return factor * power;
  }
}

/** For a reader: "Doors: 69 callouts, a year before 70". */
export function barSentence({ title, count, yearBefore }: GroupBar): string {
  const before = yearBefore === null ? "" : `, a year before ${yearBefore}`;
  return `${title}: ${count} ${count === 1 ? "callout" : "callouts"}${before}`;
}
