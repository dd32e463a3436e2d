import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { isStopWord } from "#shared-lib/search/stop-words.ts";
import { openSqliteOnDisk } from "../../../main/data/sqlite-disk/open-sqlite-on-disk.ts";
import { bm25OfMatchInfo } from "../../benchmarks/support/match-info.ts";
import { type Engine, wordsOf } from "./engines.ts";
import { addTextSql, createTextSql, matchInfoSql } from "./full-text.sql.ts";
import type { LabelledDocument } from "./labelled-set.ts";

/** The full text of SQLite on the real disk: any of the words (stop words left out), every match ranked by plain BM25. */
export async function fullText(
  documents: readonly LabelledDocument[],
): Promise<{ readonly engine: Engine; readonly close: () => void }> {
  const folder = mkdtempSync(join(tmpdir(), "sillbook-search-quality-"));
  const store = await openSqliteOnDisk(join(folder, "full-text.sqlite"));
  store.exec(createTextSql);
  store.transaction(() => {
    for (const [docid, { title, text }] of documents.entries()) store.run(addTextSql, { docid, title, text });
  });
  const engine: Engine = (query, limit) => {
    const words = wordsOf(query).filter((word) => !isStopWord(word));
    if (words.length === 0) return [];
    const match = words.map((word) => `"${word}"`).join(" OR ");
    return store
      .all<{ docid: number; info: Uint8Array }>(matchInfoSql, { match })
      .map(({ docid, info }) => ({ docid, score: bm25OfMatchInfo(info) }))
      .sort((one, other) => other.score - one.score)
      .slice(0, limit)
      .map(({ docid }) => documents[docid]?.id ?? "");
  };
  const close = (): void => {
    store.close();
    rmSync(folder, { recursive: true });
  };
  return { engine, close };
}
