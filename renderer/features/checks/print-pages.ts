import type { CheckStep } from "./check-types.ts";
import { expectedWords, foundWords, placeWords, sourceWords, verdictWords } from "./step-words.ts";

/**
 * The record's page in lines of its table (14 px at 1.25): 277 mm less the title block, the frame's margins and the
 * table's head. The letters of a line follow from the columns' widths in checks.css; a printed page was measured.
 */
const linesOfPage = 46;
/** Padding and rule between two rows, and the mark that is a little higher than its line. */
const betweenRows = 0.7;

const lines = (words: string, letters: number): number => Math.max(1, Math.ceil(words.length / letters));

/** Title, sentence and caution box over the table of the first page, in the same lines. */
const linesOfHead = (cautions: readonly string[]): number => 9 + lines(cautions.join(" "), 80) * 1.3;

/** How many lines a step takes in the record's table. */
export function linesOfStep(step: CheckStep): number {
  const title = lines(`${placeWords(step)}. ${step.title}`, 35);
  const note = step.note === "" ? 0 : lines(`Note: ${step.note}`, 36);
  const expected = lines(expectedWords(step.expected), 42) + lines(sourceWords(step), 43);
  const found = lines(`${verdictWords[step.verdict]}: ${foundWords(step.found, step.expected)}`, 22);
  return Math.max(title + note, expected, found + (step.at === null ? 0 : 2)) + betweenRows;
}

/** The steps page by page, in their order; a step is never cut in two. */
export function printPages(
  steps: readonly CheckStep[],
  cautions: readonly string[],
): readonly (readonly CheckStep[])[] {
  const pages: CheckStep[][] = [[]];
  let left = linesOfPage - linesOfHead(cautions);
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
