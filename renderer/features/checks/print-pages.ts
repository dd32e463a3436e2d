import type { CheckStep } from "./check-types.ts";
import { expectedWords, foundWords, sourceWords } from "./step-words.ts";

/** Lines of text that fit on one A4 page, and that the head of the first page takes. Checked on the printed page. */
const linesOfPage = 56;
const linesOfHead = 20;

const lines = (words: string, letters: number): number => Math.max(1, Math.ceil(words.length / letters));

/** How many lines a step takes in the record's table, from the widths of its columns. */
export function linesOfStep(step: CheckStep): number {
  const place = lines(step.title, 30);
  const expected = lines(expectedWords(step.expected), 34) + lines(sourceWords(step), 38);
  const found = lines(foundWords(step.found, step.expected), 28) + 1 + (step.by ? 1 : 0);
  const note = step.note === "" ? 0 : lines(`Note: ${step.note}`, 95);
  return Math.max(place, expected, found) + note + 1;
}

/** The steps page by page, in their order; a step stands on one page. */
export function printPages(steps: readonly CheckStep[]): readonly (readonly CheckStep[])[] {
  const pages: CheckStep[][] = [[]];
  let left = linesOfPage - linesOfHead;
  for (const step of steps) {
    const needed = linesOfStep(step);
    if (needed > left && (pages.at(-1)?.length ?? 0) > 0) {
      pages.push([]);
      left = linesOfPage;
    }
    pages.at(-1)?.push(step);
    left -= needed;
  }
  return pages;
}
