import type { CauseRanking } from "#shared-lib/contract/cause.ts";
import { countWords } from "./cause-words.ts";

/** "Ranked by 11 similar callouts … Most likely: 3 Door edge out of line, 7 of 11; then 1 and 2." Numbers are places in the note. */
export function rankingSentence(ranking: CauseRanking): string {
  const { evidence, causes } = ranking;
  const [first, ...rest] = causes;
  if (evidence.thin || first === undefined) return evidence.sentence;
  const then = rest.length === 0 ? "" : `; then ${rest.map(({ place }) => place).join(", ")}`;
  return `${evidence.sentence} Most likely: ${first.place} ${first.title}, ${countWords(first, ranking)}${then}.`;
}
