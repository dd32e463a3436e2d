/** Half-open range of UTF-16 units in the text. */
export interface TextRange {
  readonly start: number;
  readonly end: number;
}

interface MarkedTextProps {
  readonly text: string;
  /** May touch or overlap, in any order; what lies outside the text is ignored. */
  readonly ranges: readonly TextRange[];
}

/** Text with its matched words on brackets like a dimension. */
export function MarkedText({ text, ranges }: MarkedTextProps) {
  const pieces = cutText(text, ranges);
  return <>{pieces.map(({ from, words, marked }) => (marked ? <mark key={from}>{words}</mark> : words))}</>;
}

export interface TextPiece {
  readonly from: number;
  readonly words: string;
  readonly marked: boolean;
}

/** The text cut into marked and unmarked pieces; joined they give the text again. */
export function cutText(text: string, ranges: readonly TextRange[]): TextPiece[] {
  const pieces: TextPiece[] = [];
  let done = 0;
  const add = (end: number, marked: boolean) => {
    if (end > done) pieces.push({ from: done, words: text.slice(done, end), marked });
    done = Math.max(done, end);
  };
  for (const { start, end } of mergeRanges(text.length, ranges)) {
    add(start, false);
    add(end, true);
  }
  add(text.length, false);
  return pieces;
}

function mergeRanges(length: number, ranges: readonly TextRange[]): TextRange[] {
  const inside = ranges
    .map(({ start, end }) => ({ start: Math.max(0, start), end: Math.min(length, end) }))
    .filter(({ start, end }) => start < end)
    .sort((a, b) => a.start - b.start);
  const merged: { start: number; end: number }[] = [];
  for (const range of inside) {
    const last = merged.at(-1);
    if (last !== undefined && range.start <= last.end) last.end = Math.max(last.end, range.end);
    else merged.push({ ...range });
  }
  return merged;
}
