import { existsSync, readdirSync } from "node:fs";
import { join } from "node:path";
import { type QuerySettings, querySettings } from "#shared-lib/search/query-settings.ts";
import { rankingSettings } from "#shared-lib/search/ranking-settings.ts";
import {
  type Engine,
  fuseAlone,
  miniSearch,
  type OwnSettings,
  ownEngine,
  ownSettings,
  plainBm25,
} from "./engines.ts";
import { type Evaluation, evaluate, typings } from "./evaluate.ts";
import { isOdd, type LabelledSet, readLabelledSet } from "./labelled-set.ts";

const defaultSets = "../shared/published/search";

function change(query: Partial<QuerySettings>, rest: Partial<OwnSettings> = {}): OwnSettings {
  return { ...ownSettings, ...rest, query: { settings: { ...querySettings, ...query } } };
}

/** The own pipeline with one part left out at a time. */
const partsLeftOut: readonly (readonly [string, OwnSettings])[] = [
  ["everything", ownSettings],
  ["without inflections", change({ inflection: 0 })],
  ["without synonyms", { ...ownSettings, query: { synonyms: false } }],
  ["without names of the same thing", change({ sameThing: 0 })],
  ["without near meanings", change({ nearMeaning: 0 })],
  ["without compounds", change({ compound: 0 })],
  ["without number and marking parts", change({ part: 0 })],
  ["without nearness", { ...ownSettings, ranking: { ...rankingSettings, nearnessShare: 0 } }],
  ["without a weight for the title", { ...ownSettings, titleWeight: 1 }],
  ["without corrections", { ...ownSettings, query: { corrections: false } }],
];

function row(label: string, evaluations: readonly Evaluation[]): string {
  const cells = evaluations.map(({ ndcg10, mrr, success3 }) =>
    [ndcg10, mrr, success3].map((figure) => figure.toFixed(3)).join(" / "),
  );
  const clean = evaluations[0];
  const time = clean ? `${clean.p50.toFixed(1)} / ${clean.p95.toFixed(1)}` : "";
  return `| ${label} | ${cells.join(" | ")} | ${time} |`;
}

function printTable(
  title: string,
  engines: readonly (readonly [string, Engine])[],
  set: LabelledSet,
  odd: boolean,
): void {
  const queries = set.queries.filter((query) => isOdd(query) === odd);
  console.log(`\n${title}: ${set.name}, ${queries.length} ${odd ? "odd" : "even"} queries`);
  console.log(`| engine | ${typings.join(" | ")} | p50 / p95 ms clean |`);
  console.log("| --- | --- | --- | --- | --- |");
  for (const [label, engine] of engines) {
    console.log(
      row(
        label,
        typings.map((typing) => evaluate(engine, queries, typing)),
      ),
    );
  }
}

function findSets(args: readonly string[]): LabelledSet[] {
  const folders = args.filter((arg) => !arg.startsWith("--"));
  const named = existsSync(defaultSets)
    ? readdirSync(defaultSets).map((name) => join(defaultSets, name))
    : [];
  return (folders.length > 0 ? folders : named).flatMap((folder) => readLabelledSet(folder) ?? []);
}

export async function run(args: readonly string[]): Promise<void> {
  const sets = findSets(args);
  if (sets.length === 0) {
    console.error("No labelled set: name a folder with docs.jsonl, queries.jsonl and qrels.jsonl.");
    process.exitCode = 1;
    return;
  }
  console.log("Each cell: nDCG@10 / MRR / success@3.");
  for (const set of sets) {
    const engines: [string, Engine][] = [
      ["own", ownEngine(set.documents, ownSettings)],
      ["plain BM25", plainBm25(set.documents)],
      ["MiniSearch, fuzzy 0.2", miniSearch(set.documents)],
    ];
    if (!args.includes("--quick")) {
      engines.push(["fuse.js alone", fuseAlone(set.documents)]);
    }
    printTable("Engines", engines, set, true);
    const own = partsLeftOut.map(([label, settings]) => [label, ownEngine(set.documents, settings)] as const);
    printTable("Own, one part left out", own, set, true);
    printTable("Own on the queries used for choosing", own.slice(0, 1), set, false);
  }
}
