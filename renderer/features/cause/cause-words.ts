import type { CauseRanking, RankedCause } from "#shared-lib/contract/cause.ts";
import { formatFraction, formatQuantity } from "#shared-lib/format.ts";

/** "proved", "ruled out", "about 6 in 10"; no number where the evidence is too thin for one. */
export function standingWords(cause: RankedCause, ranking: CauseRanking): string {
  if (ranking.contradiction !== null) return cause.ruledOutBy.length > 0 ? "ruled out" : "";
  if (cause.probability === 0) return "ruled out";
  if (cause.probability > 0.999) return "the only one left";
  if (ranking.evidence.thin) return "";
  const tenths = Math.round(cause.probability * 10);
  if (tenths === 0) return "under 1 in 20";
  return tenths === 10 ? "more than 9 in 10" : `about ${tenths} in 10`;
}

/** "7 of 11"; what a count is of stands in the sentence above the table. */
export function countWords(cause: RankedCause, { evidence }: CauseRanking): string {
  return evidence.callouts === 0 ? "" : formatFraction(cause.callouts, evidence.callouts);
}

/** "about 40 min, as at 5 visits" */
export function repairWords({ minutes, fromVisits }: CauseRanking["repairs"][number]): string {
  const length = `about ${formatQuantity(minutes, "min")}`;
  return fromVisits > 0 ? `${length}, as at ${fromVisits} visits` : `${length} assumed, no visits to go by`;
}
