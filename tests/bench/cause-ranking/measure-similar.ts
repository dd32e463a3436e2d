import { foldWord } from "#shared-lib/search/fold-word.ts";
import { plainBm25 } from "../search-quality/engines.ts";
import type { History, PastFix } from "./demonstration-history.ts";

const shown = 3;

/** Which cause a fix is of: the note's, or its own words where they are not those of an attached fix. */
export function causeIds(fixes: readonly PastFix[]): (fix: PastFix) => string {
  const words = (fix: PastFix): string => foldWord(fix.cause.replace(/\s+/g, " ").trim());
  const attached = ({ noteId, causeKey }: PastFix): string | null =>
    noteId !== null && causeKey !== null ? `${noteId} ${causeKey}` : null;
  const byWords = new Map(fixes.flatMap((fix) => (attached(fix) ? [[words(fix), attached(fix)]] : [])));
  return (fix) => attached(fix) ?? byWords.get(words(fix)) ?? words(fix);
}

/** Causes that a way of finding shows in its first three lines for a callout, itself left out. */
type Way = (fix: PastFix) => readonly string[];

export function measureSimilar(history: History): Record<string, Record<string, string>> {
  const { fixes } = history;
  const causeOf = causeIds(fixes);
  const ways: Record<string, Way> = {
    "Sillbook, one line a cause": (fix) =>
      history
        .ask("cause.similar", { text: fix.said, liftId: fix.liftId, calloutId: fix.calloutId, limit: shown })
        .callouts.flatMap(({ calloutId, cause }) =>
          fixes.filter((one) => one.calloutId === calloutId && one.cause === cause).map(causeOf),
        ),
    "nearest callouts by the search": (fix) => nearestBySearch(history, fix, causeOf),
    "plain BM25": bm25Way(fixes, causeOf),
    "most recent on this lift": (fix) =>
      fixes
        .filter(
          ({ liftId, calloutId, at }) => liftId === fix.liftId && calloutId !== fix.calloutId && at <= fix.at,
        )
        .slice(-shown)
        .map(causeOf),
    "any callout at all (the most there is)": (fix) =>
      fixes.filter(({ calloutId }) => calloutId !== fix.calloutId).map(causeOf),
  };
  return Object.fromEntries(
    Object.entries(ways).map(([name, way]) => {
      const hits = fixes.filter((fix) => way(fix).includes(causeOf(fix))).length;
      return [
        name,
        { "same cause among the first three": percent(hits / fixes.length), callouts: String(fixes.length) },
      ];
    }),
  );
}

const percent = (share: number): string => `${(100 * share).toFixed(1)} %`;

function nearestBySearch({ ask, fixes }: History, fix: PastFix, causeOf: (fix: PastFix) => string): string[] {
  const { groups } = ask("search.find", {
    text: fix.said,
    kinds: ["fix"],
    contextLiftId: fix.liftId,
    limitPerKind: shown + 3,
  });
  return groups
    .flatMap(({ hits }) => hits)
    .filter(({ calloutId }) => calloutId !== null && calloutId !== fix.calloutId)
    .slice(0, shown)
    .flatMap(({ calloutId, title }) =>
      fixes.filter((one) => one.calloutId === calloutId && one.cause === title).map(causeOf),
    );
}

function bm25Way(fixes: readonly PastFix[], causeOf: (fix: PastFix) => string): Way {
  const engine = plainBm25(
    fixes.map((fix, index) => ({
      id: String(index),
      title: "",
      text: `${fix.said} ${fix.cause} ${fix.fix}`,
    })),
  );
  return (fix) =>
    engine(fix.said, shown + 3)
      .map((id) => fixes[Number(id)] as PastFix)
      .filter(({ calloutId }) => calloutId !== fix.calloutId)
      .slice(0, shown)
      .map(causeOf);
}
