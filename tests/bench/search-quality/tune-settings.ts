import { querySettings } from "#shared-lib/search/query-settings.ts";
import { rankingSettings } from "#shared-lib/search/ranking-settings.ts";
import { type OwnSettings, ownEngine, ownSettings } from "./engines.ts";
import { evaluate } from "./evaluate.ts";
import { isOdd, readLabelledSet } from "./labelled-set.ts";

const steps = [0.5, 0.75, 1.25, 1.5];

/** Every number of the query reading and the ranking, moved alone up and down, and the title's weight. */
function variations(): (readonly [string, OwnSettings])[] {
  const tried: (readonly [string, OwnSettings])[] = [["as it is", ownSettings]];
  for (const step of steps) {
    for (const [name, value] of Object.entries(querySettings)) {
      const settings = { ...querySettings, [name]: value * step };
      tried.push([`${name} ${value * step}`, { ...ownSettings, query: { settings } }]);
    }
    for (const [name, value] of Object.entries(rankingSettings)) {
      const ranking = { ...rankingSettings, [name]: value * step };
      tried.push([`${name} ${value * step}`, { ...ownSettings, ranking }]);
    }
    const titleWeight = ownSettings.titleWeight * step;
    tried.push([`titleWeight ${titleWeight}`, { ...ownSettings, titleWeight }]);
  }
  return tried.sort(([one], [other]) => (one < other ? -1 : 1));
}

/** Prints nDCG@10 on the even queries of each folder for every variation. The odd ones are never looked at here. */
export async function run(folders: readonly string[]): Promise<void> {
  const sets = folders.flatMap((folder) => readLabelledSet(folder) ?? []);
  console.log(["", ...sets.map(({ name }) => name)].join("\t"));
  for (const [label, settings] of variations()) {
    const figures = sets.map(({ documents, queries }) => {
      const even = queries.filter((query) => !isOdd(query));
      return evaluate(ownEngine(documents, settings), even, "clean").ndcg10.toFixed(4);
    });
    console.log([label.padEnd(24), ...figures].join("\t"));
  }
}
