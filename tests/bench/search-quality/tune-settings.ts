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
  for (const v of [0, 0.3, 0.6, 1]) tries.push([`inflection ${v}`, q({ inflection: v })]);
  for (const v of [0, 0.3, 0.6, 1]) tries.push([`sameThing ${v}`, q({ sameThing: v })]);
  for (const v of [0, 0.2, 0.35, 0.7, 0.9]) tries.push([`nearMeaning ${v}`, q({ nearMeaning: v })]);
  for (const v of [0, 0.2, 0.7, 1]) tries.push([`phraseWord ${v}`, q({ phraseWord: v })]);
  for (const v of [0, 0.15, 0.6, 1]) tries.push([`nearnessShare ${v}`, r({ nearnessShare: v })]);
  for (const v of [1, 2, 8]) tries.push([`nearnessReach ${v}`, r({ nearnessReach: v })]);
  for (const v of [0.6, 0.9, 1.6, 2, 2.5]) tries.push([`saturation ${v}`, r({ saturation: v })]);
  for (const v of [0, 0.3, 0.45, 0.75, 0.9])
    tries.push([`textLengthShare ${v}`, { ...ownSettings, textLengthShare: v }]);
  for (const v of [0.5, 1, 2, 3, 4]) tries.push([`titleWeight ${v}`, { ...ownSettings, titleWeight: v }]);
  for (const [label, settings] of tries) if (!only || label.startsWith(only)) show(label, settings);
}
