import { letteringWidth } from "./text-width.ts";

/** One lift's line of time. Times in milliseconds since 1970. */
export interface ArchRow {
  readonly id: string;
  readonly title: string;
  readonly note: string;
  /** Callouts of the chain, each within the repeat window of the one before. */
  readonly times: readonly number[];
  /** Red pencil: only for the chains that the title names. */
  readonly standsOut: boolean;
}

export interface ArchesInput {
  readonly from: number;
  readonly to: number;
  /** Grid lines with their words, such as the first of each month. */
  readonly ticks: readonly { readonly at: number; readonly words: string }[];
  readonly rows: readonly ArchRow[];
}

export interface ArchesLayout {
  readonly width: number;
  readonly height: number;
  readonly textSize: number;
  readonly lineLeft: number;
  readonly lineRight: number;
  readonly ticks: readonly { readonly x: number; readonly words: string }[];
  readonly top: number;
  readonly rows: readonly {
    readonly row: ArchRow;
    readonly y: number;
    readonly top: number;
    readonly height: number;
    readonly ticks: readonly number[];
    readonly arches: readonly string[];
  }[];
}

export function archesLayout(input: ArchesInput, given: number, textSize: number): ArchesLayout {
  const titles = input.rows.flatMap((row) => [
    letteringWidth(row.title, textSize, true),
    letteringWidth(row.note, textSize),
  ]);
  const nameWidth = Math.min(Math.ceil(Math.max(0, ...titles)) + 12, Math.max(110, given * 0.42));
  const countWidth = textSize * 2.4;
  const lineLeft = nameWidth;
  const lineRight = Math.max(nameWidth + 140, given - countWidth);
  const top = textSize * 1.4;
  const height = Math.max(44, textSize * 2.8);
  const span = input.to - input.from;
  const xOf = (time: number) =>
    span > 0 ? lineLeft + ((time - input.from) / span) * (lineRight - lineLeft) : lineLeft;
  const shown = (time: number) => time >= input.from && time <= input.to;
  return {
    width: Math.ceil(Math.max(given, lineRight + countWidth)),
    height: Math.ceil(top + input.rows.length * height + 4),
    textSize,
    lineLeft,
    lineRight,
    top,
    ticks: roomyTicks(
      input.ticks.filter((tick) => shown(tick.at)).map((tick) => ({ x: xOf(tick.at), words: tick.words })),
      textSize,
    ),
    rows: input.rows.map((row, index) => {
      const y = top + (index + 1) * height - 12;
      const xs = row.times
        .filter(shown)
        .sort((a, b) => a - b)
        .map(xOf);
      return {
        row,
        y,
        top: top + index * height,
        height,
        ticks: xs,
        arches: xs.slice(1).map((x, gap) => archPath(xs[gap] ?? x, x, y - 4, Math.min(20, height - 22))),
      };
    }),
  };
}

/** Words that would touch the ones before them are left out; their grid line stays. */
function roomyTicks(
  ticks: readonly { x: number; words: string }[],
  textSize: number,
): { x: number; words: string }[] {
  let end = Number.NEGATIVE_INFINITY;
  return ticks.map((tick) => {
    if (tick.x < end) return { x: tick.x, words: "" };
    end = tick.x + letteringWidth(tick.words, textSize) + 8;
    return tick;
  });
}

function archPath(from: number, to: number, y: number, height: number): string {
  const one = (value: number) => Math.round(value * 10) / 10;
  return `M${one(from)} ${one(y)}C${one(from)} ${one(y - height * 1.33)} ${one(to)} ${one(y - height * 1.33)} ${one(to)} ${one(y)}`;
}

export function archRowSentence(row: ArchRow): string {
  const note = row.note === "" ? "" : `, ${row.note}`;
  return `${row.title}${note}: ${row.times.length} callouts in this chain.`;
}
