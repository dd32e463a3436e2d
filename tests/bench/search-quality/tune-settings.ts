import { querySettings } from "#shared-lib/search/query-settings.ts";
import { rankingSettings } from "#shared-lib/search/ranking-settings.ts";
import { type OwnSettings, ownEngine, ownSettings } from "./engines.ts";
import { evaluate } from "./evaluate.ts";
import { isOdd, type LabelledSet, readLabelledSet } from "./labelled-set.ts";

export async function run(args: readonly string[]): Promise<void> {
  const base = "../shared/published/search/";
  const sets = ["maintie_sim", "cranfield"].map((name) => readLabelledSet(base + name) as LabelledSet);
  const show = (label: string, settings: OwnSettings) => {
    const cells = sets.map((set) => {
      const queries = set.queries.filter((query) => !isOdd(query));
      return evaluate(ownEngine(set.documents, settings), queries, "clean").ndcg10.toFixed(4);
    });
    console.log(label.padEnd(40), cells.join("  "));
  };
  show("base", ownSettings);
  const q = (change: object) => ({ ...ownSettings, query: { settings: { ...querySettings, ...change } } });
  const r = (change: object) => ({ ...ownSettings, ranking: { ...rankingSettings, ...change } });
  const only = args[0];
  const tries: [string, OwnSettings][] = [];
  for (const v of [0, 0.25, 0.5, 0.75]) tries.push([`shortShare ${v}`, r({ shortShare: v })]);
  for (const v of [0.65, 0.85]) tries.push([`longShare ${v}`, r({ longShare: v })]);
  for (const v of [1.2, 2, 2.4]) tries.push([`saturation ${v}`, r({ saturation: v })]);
  for (const v of [0, 0.2, 0.6]) tries.push([`nearnessShare ${v}`, r({ nearnessShare: v })]);
  for (const v of [0, 8, 30]) tries.push([`nearnessFrom ${v}`, r({ nearnessFrom: v })]);
  for (const v of [1.5, 3]) tries.push([`titleWeight ${v}`, { ...ownSettings, titleWeight: v }]);
  for (const v of [0.4, 0.6, 0.9]) tries.push([`inflection ${v}`, q({ inflection: v })]);
  for (const v of [0.1, 0.2]) tries.push([`phraseWord ${v}`, q({ phraseWord: v })]);
  for (const [label, settings] of tries) if (!only || label.startsWith(only)) show(label, settings);
}
