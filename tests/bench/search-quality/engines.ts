import Fuse from "fuse.js";
import MiniSearch from "minisearch";
import { analyseQuery, type QueryOptions } from "#shared-lib/search/analyse-query.ts";
import { sillbookIndexShape } from "#shared-lib/search/index-shape.ts";
import { type RankingSettings, rankingSettings } from "#shared-lib/search/ranking-settings.ts";
import { SearchIndex } from "#shared-lib/search/search-index.ts";
import { isStopWord } from "#shared-lib/search/stop-words.ts";
import type { WordsInUse } from "#shared-lib/search/vocabulary.ts";
import type { LabelledDocument } from "./labelled-set.ts";

/** A way to rank: document ids, best first, at most `limit`. */
export type Engine = (query: string, limit: number) => string[];

export interface OwnSettings {
  /** Of documents without fields of their own. */
  readonly titleWeight: number;
  /** False: a word counts the same in every field. */
  readonly fieldWeights: boolean;
  /** False: of the words a mistyped one could be, a frequent one is not preferred. */
  readonly frequentCorrections: boolean;
  readonly ranking: RankingSettings;
  readonly query: QueryOptions;
}

export const ownSettings: OwnSettings = {
  titleWeight: 3,
  fieldWeights: true,
  frequentCorrections: true,
  ranking: rankingSettings,
  query: {},
};

/** The program's own pipeline, through the same calls the program makes. */
export function ownEngine(documents: readonly LabelledDocument[], settings: OwnSettings): Engine {
  const index = new SearchIndex({ fields: fieldsOf(documents, settings), attributes: [] }, settings.ranking);
  index.addAll(
    documents.map(({ id, title, text, fields }) => ({
      key: id,
      kind: "note",
      fields: fields ?? { title, text },
    })),
  );
  return (query, limit) => {
    const words = settings.frequentCorrections ? index.words : equallyFrequent(index.words);
    const analysed = analyseQuery(query, words, settings.query);
    const result = index.search(analysed, { limitPerKind: limit });
    return result.groups.flatMap((group) => group.hits.map((hit) => hit.key));
  };
}

function fieldsOf(documents: readonly LabelledDocument[], { titleWeight, fieldWeights }: OwnSettings) {
  const fields = documents[0]?.fields
    ? sillbookIndexShape.fields
    : [
        { name: "title", weight: titleWeight },
        { name: "text", weight: 1 },
      ];
  return fieldWeights ? fields : fields.map(({ name }) => ({ name, weight: 1 }));
}

const equallyFrequent = (words: WordsInUse): WordsInUse => ({
  documentFrequency: (term) => Math.min(1, words.documentFrequency(term)),
  inflections: (term) => words.inflections(term),
  completions: (prefix, limit) => words.completions(prefix, limit),
  neighbours: (word, limit) => words.neighbours(word, limit),
});

export const wordsOf = (text: string) => text.toLowerCase().match(/[\p{L}\p{N}]+/gu) ?? [];

/** BM25 (k1 1.2, b 0.75) over lower-case words, stop words left out of the query, nothing else. */
export function plainBm25(documents: readonly LabelledDocument[]): Engine {
  const counts = documents.map(({ title, text }) => {
    const words = wordsOf(`${title} ${text}`);
    const own = new Map<string, number>();
    for (const word of words) {
      own.set(word, (own.get(word) ?? 0) + 1);
    }
    return { own, length: words.length };
  });
  const average = counts.reduce((sum, { length }) => sum + length, 0) / counts.length;
  const frequencies = new Map<string, number>();
  for (const { own } of counts) {
    for (const word of own.keys()) {
      frequencies.set(word, (frequencies.get(word) ?? 0) + 1);
    }
  }
  return (query, limit) => {
    const words = new Set(wordsOf(query).filter((word) => !isStopWord(word)));
    const scored = counts.map(({ own, length }, index) => {
      let score = 0;
      for (const word of words) {
        const count = own.get(word) ?? 0;
        const frequency = frequencies.get(word) ?? 0;
        const rarity = Math.log(1 + (counts.length - frequency + 0.5) / (frequency + 0.5));
        score += (rarity * count * 2.2) / (count + 1.2 * (0.25 + (0.75 * length) / average));
      }
      return { id: (documents[index] as LabelledDocument).id, score };
    });
    return scored
      .filter(({ score }) => score > 0)
      .sort((one, other) => other.score - one.score)
      .slice(0, limit)
      .map(({ id }) => id);
  };
}

/** MiniSearch with its fuzzy option at 0.2, stop words left out. */
export function miniSearch(documents: readonly LabelledDocument[]): Engine {
  const mini = new MiniSearch<LabelledDocument>({
    fields: ["title", "text"],
    processTerm: (term) => (isStopWord(term.toLowerCase()) ? null : term.toLowerCase()),
  });
  mini.addAll([...documents]);
  return (query, limit) =>
    mini
      .search(query, { fuzzy: 0.2 })
      .slice(0, limit)
      .map(({ id }) => String(id));
}

/** fuse.js alone, its word search, as a program without an engine of its own would use it. */
export function fuseAlone(documents: readonly LabelledDocument[]): Engine {
  const fuse = new Fuse([...documents], {
    keys: ["title", "text"],
    ignoreLocation: true,
    includeScore: true,
    useTokenSearch: true,
    threshold: 0.4,
  });
  return (query, limit) => {
    const words = wordsOf(query).filter((word) => !isStopWord(word));
    return fuse.search(words.join(" "), { limit }).map(({ item }) => item.id);
  };
}
