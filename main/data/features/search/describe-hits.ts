import { calculatorById } from "#shared-lib/calculators/registry.ts";
import type { Cause } from "#shared-lib/contract/fault-note.ts";
import type { ResultKind, SearchHit } from "#shared-lib/contract/search.ts";
import { formatDate } from "#shared-lib/format.ts";
import { explainHit } from "#shared-lib/search/explain-hit.ts";
import { Marker } from "#shared-lib/search/mark-matches.ts";
import type { SearchHit as RankedHit } from "#shared-lib/search/rank-documents.ts";
import type { SearchQuery } from "#shared-lib/search/search-query.ts";
import type { Store } from "../../store.ts";
import {
  calloutFactsSql,
  checkFactsSql,
  fixFactsSql,
  liftDocumentSql,
  noteFactsSql,
  visitFactsSql,
} from "./search.sql.ts";

type Facts = Readonly<Record<string, string | null>>;
type Words = Pick<SearchHit, "title" | "second"> & Partial<SearchHit>;

const fieldWords: Readonly<Record<string, string>> = {
  title: "title",
  symptom: "symptom",
  cause: "cause",
  fix: "fix",
  body: "notes",
  place: "place",
  marking: "marking or number",
};

/** Turns ranked hits into what a person reads: title, second line, marked words, why. */
export class HitDescriber {
  readonly #store: Store;
  readonly #query: SearchQuery;
  readonly #marker: Marker;

  constructor(store: Store, query: SearchQuery) {
    this.#store = store;
    this.#query = query;
    this.#marker = new Marker(query);
  }

  /** Null where the record vanished between ranking and reading. */
  describe(hit: RankedHit): SearchHit | null {
    const kind = hit.kind as ResultKind;
    const id = hit.key.slice(kind.length + 1);
    const words = this.#words(kind, id);
    if (!words) return null;
    return {
      kind,
      id,
      number: null,
      status: null,
      liftId: null,
      calloutId: null,
      at: hit.date === undefined ? null : new Date(hit.date).toISOString(),
      ...words,
      titleMarks: this.marks(words.title),
      secondMarks: this.marks(words.second),
      why: this.#why(hit, words.why ?? ""),
      score: hit.score,
    };
  }

  marks(text: string): [number, number][] {
    return this.#marker.mark(text).map(({ start, end }) => [start, end]);
  }

  #words(kind: ResultKind, id: string): Words | null {
    if (kind === "calculator") {
      const calculator = calculatorById(id);
      return calculator ? { title: calculator.name, second: calculator.purpose } : null;
    }
    const sql = {
      note: noteFactsSql,
      fix: fixFactsSql,
      callout: calloutFactsSql,
      lift: liftDocumentSql,
      check: checkFactsSql,
      visit: visitFactsSql,
    }[kind];
    const facts = this.#store.get<Facts>(sql, { id });
    return facts ? this.#recordWords(kind, facts) : null;
  }

  #recordWords(kind: Exclude<ResultKind, "calculator">, facts: Facts): Words {
    const text = (name: string): string => (facts[name] ?? "").replace(/\s+/g, " ").trim();
    const whereAndWhen = (at: string): string =>
      [text("liftTitle"), formatDate(text(at)), text("personName")].filter(Boolean).join(" · ");
    switch (kind) {
      case "note":
        return this.#noteWords(facts);
      case "fix":
        return {
          title: text("cause"),
          second: `${text("fix")} · ${whereAndWhen("at")}`,
          liftId: facts.liftId ?? null,
          calloutId: facts.calloutId ?? null,
        };
      case "callout":
        return {
          title: `“${text("said")}”`,
          second: `${whereAndWhen("receivedAt")} · ${text("fix") ? `ended by: ${text("fix")}` : (facts.ending ?? "open")}`,
          number: text("number"),
          status: facts.ending ?? "open",
          liftId: facts.liftId ?? null,
          calloutId: text("id"),
        };
      case "lift":
        return {
          title: text("title"),
          second: [text("place"), text("controllerFamily")].filter(Boolean).join(" · "),
          liftId: text("ref"),
        };
      case "check":
        return { title: text("planName"), second: whereAndWhen("startedAt"), liftId: facts.liftId ?? null };
      case "visit":
        return {
          title: text("found") || text("done") || text("kind"),
          second: `${text("kind")} · ${whereAndWhen("arrivedAt")}`,
          liftId: facts.liftId ?? null,
        };
    }
  }

  #noteWords(facts: Facts): Words {
    const symptoms = JSON.parse(facts.symptoms ?? "[]") as string[];
    const causes = JSON.parse(facts.causes ?? "[]") as Cause[];
    const callouts = Number(facts.callouts ?? 0);
    const passages = [
      ...symptoms.map((symptom) => `“${symptom}”`),
      ...causes.map((cause) => `cause: ${cause.title}`),
    ];
    const status = facts.status === "draft" && facts.starterKey ? "starter note" : (facts.status ?? "draft");
    return {
      title: facts.title ?? "",
      second: this.#bestPassage(passages),
      number: facts.number ?? null,
      status: facts.status ?? null,
      why: [status, callouts > 0 ? `${callouts} ${callouts === 1 ? "callout" : "callouts"}` : ""]
        .filter(Boolean)
        .join("; "),
    };
  }

  /** The passage with most marked characters; the first where none is marked. */
  #bestPassage(passages: readonly string[]): string {
    const marked = (text: string): number =>
      this.marks(text).reduce((sum, [start, end]) => sum + end - start, 0);
    return passages.reduce(
      (best, passage) => (marked(passage) > marked(best) ? passage : best),
      passages[0] ?? "",
    );
  }

  #why(hit: RankedHit, more: string): string {
    const { fields, answered, raisedFor } = explainHit(hit, this.#query);
    const where = fields.slice(0, 3).map((field) => fieldWords[field] ?? field);
    const parts = [
      where.length > 1 ? `${where.slice(0, -1).join(", ")} and ${where.at(-1)}` : (where[0] ?? ""),
    ];
    const synonym = answered.find(({ reading, found }) => reading === "synonym" && found.length > 0);
    if (synonym) parts.push(`“${synonym.found[0]}” for “${synonym.asked}”`);
    if (raisedFor.includes("lift")) parts.push("same lift");
    else if (raisedFor.includes("controllerFamily")) parts.push("same controller family");
    if (more) parts.push(more);
    return parts.filter(Boolean).join("; ");
  }
}
