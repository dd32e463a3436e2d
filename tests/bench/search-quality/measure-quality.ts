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
import { fullText } from "./full-text.ts";
import { isOdd, type LabelledQuery, type LabelledSet, readLabelledSet } from "./labelled-set.ts";
import { readOwnSet } from "./own-set.ts";

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
  ["without weights of the fields", { ...ownSettings, fieldWeights: false }],
  ["corrections whatever the frequency", { ...ownSettings, frequentCorrections: false }],
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
  queries: readonly LabelledQuery[],
): void {
  console.log(`\n${title}, ${queries.length} queries`);
  console.log(`| engine | ${typings.join(" | ")} | p50 / p95 ms clean |`);
  console.log("| --- | --- | --- | --- | --- |");
  for (const [label, engine] of engines) {
    const evaluations = typings.map((typing) => evaluate(engine, queries, typing));
    console.log(row(label, evaluations));
  }
}

/** What a person has typed when four letters of the last word stand there. */
function cutOff(text: string): string {
  return text.replace(/[^\p{L}\p{N}]+$/u, "").replace(/(\S{4})\S+$/, "$1");
}

/** Typing as one goes: the last word cut off, completed by the program or taken as it stands. */
function whileTyping({ documents }: LabelledSet): (readonly [string, Engine])[] {
  const cut =
    (engine: Engine): Engine =>
    (query, limit) =>
      engine(cutOff(query), limit);
  const completing = { ...ownSettings, query: { typing: true } };
  return [
    ["last word cut off, completed", cut(ownEngine(documents, completing))],
    ["last word cut off, taken as it stands", cut(ownEngine(documents, ownSettings))],
  ];
}

async function measureSet(set: LabelledSet, isQuick: boolean): Promise<void> {
  // Settings were chosen on even queries of the published sets; nothing was chosen on the own set.
  const isOwn = set.documents[0]?.fields !== undefined;
  const queries = isOwn ? set.queries : set.queries.filter(isOdd);
  const which = `${set.name}, ${isOwn ? "all" : "odd"}`;
  const text = await fullText(set.documents);
  const engines: [string, Engine][] = [
    ["own", ownEngine(set.documents, ownSettings)],
    ["plain BM25", plainBm25(set.documents)],
    ["FTS4 OR, plain BM25", text.engine],
    ["MiniSearch, fuzzy 0.2", miniSearch(set.documents)],
  ];
  if (!isQuick) engines.push(["fuse.js alone", fuseAlone(set.documents)]);
  printTable(`Engines: ${which}`, engines, queries);
  text.close();
  const own = partsLeftOut.map(([label, settings]) => [label, ownEngine(set.documents, settings)] as const);
  printTable(`Own, one part left out: ${which}`, own, queries);
  printTable(`Own, while typing: ${which}`, whileTyping(set), queries);
  if (isOwn) return;
  const even = set.queries.filter((query) => !isOdd(query));
  printTable(`Own on the queries used for choosing: ${set.name}, even`, own.slice(0, 1), even);
}

function findSets(args: readonly string[]): LabelledSet[] {
  const folders = args.filter((arg) => !arg.startsWith("--"));
  const named = existsSync(defaultSets)
    ? readdirSync(defaultSets).map((name) => join(defaultSets, name))
    : [];
  return (folders.length > 0 ? folders : named).flatMap((folder) => readLabelledSet(folder) ?? []);
}

export async function run(args: readonly string[]): Promise<void> {
  console.log("Each cell: nDCG@10 / MRR / success@3.");
  for (const set of [readOwnSet("."), ...findSets(args)]) await measureSet(set, args.includes("--quick"));
}
