import MiniSearch from "minisearch";
import type { DataSession } from "../../main/data/data-session.ts";
import { everyDocumentSql, matchInfoSql } from "./support/baseline.sql.ts";
import { type LargeCompany, largeCompany, openLargeCompany } from "./support/large-company.ts";
import { bm25OfMatchInfo } from "./support/match-info.ts";
import { printTable, quantile, type Row, timed } from "./support/report.ts";

const target = 20;

/** Search end to end through the contract, beside full-text ranking by matchinfo and an in-memory index of the registry. */
export async function run(): Promise<void> {
  const rows: Row[] = [];
  for (const size of [10_000, 100_000]) rows.push(...(await measure(await largeCompany(size))));
  printTable(`search, milliseconds; target p95 <= ${target} at 100,000`, rows);
}

async function measure(company: LargeCompany): Promise<Row[]> {
  const session = await openLargeCompany(company);
  const warm = await timed(() => session.core.search.buildAll());
  const ours = await times(company.queries, (text) =>
    session.request({ operation: "search.find", input: { text, typing: true } }),
  );
  const sample = company.queries.slice(0, 40);
  const fullText = await times(sample, (text) => fullTextByMatchInfo(session, text));
  const mini = miniSearch(session);
  const memory = await times(sample, (text) => mini.search(text, { fuzzy: 0.2, prefix: true }).slice(0, 10));
  session.close();
  const row = (what: string, values: readonly number[]): Row => ({
    what,
    callouts: String(company.callouts),
    p50: quantile(values, 0.5),
    p95: quantile(values, 0.95),
    "p95 / ours": quantile(values, 0.95) / quantile(ours, 0.95),
  });
  return [
    row("Sillbook, through the contract", ours),
    row("FTS4 OR, ranked by matchinfo", fullText),
    row("MiniSearch, fuzzy 0.2, in memory", memory),
    { what: "building the ranked index once", callouts: String(company.callouts), p50: warm },
  ];
}

async function times(queries: readonly string[], search: (text: string) => unknown): Promise<number[]> {
  for (const text of queries.slice(0, 10)) await search(text);
  const measured: number[] = [];
  for (const text of queries) measured.push(await timed(() => search(text)));
  return measured;
}

/** The obvious way: any of the words, every match ranked by BM25 from matchinfo('pcnalx'). */
function fullTextByMatchInfo(session: DataSession, text: string): number[] {
  const words = text.toLowerCase().match(/[\p{L}\p{N}]+/gu) ?? [];
  const rows = session.core.file.all<{ docid: number; info: Uint8Array }>(matchInfoSql, {
    match: words.map((word) => `"${word}"`).join(" OR "),
  });
  const scored = rows.map(({ docid, info }) => ({
    docid,
    score: bm25OfMatchInfo(info),
  }));
  return scored
    .sort((one, other) => other.score - one.score)
    .slice(0, 10)
    .map(({ docid }) => docid);
}

function miniSearch(session: DataSession): MiniSearch {
  const index = new MiniSearch({ fields: ["title", "symptom", "cause", "fix", "place"], idField: "docid" });
  index.addAll(session.core.file.all(everyDocumentSql));
  return index;
}
