import Fuse from "fuse.js";
import type { LiftLine } from "#shared-lib/contract/lift.ts";
import type { Store } from "../../store.ts";
import { listCallersSql } from "./lift.sql.ts";
import { listLiftLines } from "./lift-lines.ts";

interface Candidate {
  readonly line: LiftLine;
  readonly title: string;
  readonly street: string;
  readonly plate: string;
  readonly callers: string;
  readonly numbers: string;
}

const sources = [
  { name: "title", weight: 3, words: "name" },
  { name: "street", weight: 2, words: "street" },
  { name: "plate", weight: 2, words: "plate number" },
  { name: "numbers", weight: 2, words: "a caller's number" },
  { name: "callers", weight: 1, words: "a caller's name" },
] as const;

const digitsOnly = (text: string): string => text.replace(/\D/g, "");

function candidates(store: Store): Candidate[] {
  const callers = new Map<string, { names: Set<string>; numbers: Set<string> }>();
  for (const row of store.all<{ liftId: string; caller: string; callBack: string }>(listCallersSql)) {
    const known = callers.get(row.liftId) ?? { names: new Set(), numbers: new Set() };
    callers.set(row.liftId, known);
    if (row.caller && known.names.size < 12) known.names.add(row.caller);
    if (row.callBack && known.numbers.size < 12) known.numbers.add(row.callBack);
  }
  return listLiftLines(store).map((line) => ({
    line,
    title: line.title,
    street: line.street,
    plate: line.plateNumber,
    callers: [...(callers.get(line.id)?.names ?? [])].join(" "),
    numbers: [...(callers.get(line.id)?.numbers ?? [])].map(digitsOnly).join(" "),
  }));
}

/**
 * Lifts by parts of site, street, lift name, plate number or a caller's number, best first; typing errors are forgiven.
 * Every typed word has to be found somewhere in the lift's record: "saltpan 2" is Saltpan Court, Lift 2.
 */
export function lookUpLifts(
  store: Store,
  text: string,
  limit: number,
): { line: LiftLine; because: string }[] {
  const all = candidates(store);
  const words = typedWords(text);
  if (words.length === 0) return all.slice(0, limit).map(({ line }) => ({ line, because: "" }));
  const asOneNumber = digitsOnly(text);
  if (asOneNumber.length >= 5) return byNumber(all, text.trim(), asOneNumber).slice(0, limit);
  const fuse = new Fuse(all, {
    keys: sources.map(({ name, weight }) => ({ name, weight })),
    includeScore: true,
    ignoreLocation: true,
    threshold: 0.34,
    minMatchCharLength: 1,
  });
  const query = { $and: words.map((word) => ({ $or: sources.map(({ name }) => ({ [name]: word })) })) };
  const found = fuse
    .search(query)
    .map(({ item, score = 1 }) => ({ item, begun: wordsBegun(item, words), score }));
  // Words as they stand in a record come before look-alikes: "net" is Net Loft before it is Gannet Row.
  found.sort((one, other) => other.begun - one.begun || one.score - other.score);
  return found.slice(0, limit).map(({ item }) => ({ line: item.line, because: becauseOf(item, words) }));
}

/** Small words say nothing about which lift it is, unless nothing else was typed. */
const smallWords = new Set(["the", "a", "at", "in", "of", "on", "lift", "elevator", "please"]);

function typedWords(text: string): string[] {
  const words = text
    .trim()
    .toLowerCase()
    .split(/[\s,]+/)
    .filter(Boolean)
    .slice(0, 12);
  const telling = words.filter((word) => !smallWords.has(word));
  return telling.length > 0 ? telling : words;
}

/** A telephone number is known or it is not: one that only looks like it belongs to somebody else. */
function byNumber(
  all: readonly Candidate[],
  typed: string,
  digits: string,
): { line: LiftLine; because: string }[] {
  const ofCaller = all.filter(({ numbers }) => numbers.split(" ").some((number) => number.endsWith(digits)));
  const ofPlate = all.filter(
    ({ plate }) => plate !== "" && plate.toLowerCase().includes(typed.toLowerCase()),
  );
  return [
    ...ofCaller.map(({ line }) => ({ line, because: "a caller's number" })),
    ...ofPlate
      .filter((one) => !ofCaller.includes(one))
      .map(({ line }) => ({ line, because: "plate number" })),
  ];
}

function beginsIn(text: string, word: string): boolean {
  return ` ${text.toLowerCase()}`.replace(/[^\p{L}\p{N}]+/gu, " ").includes(` ${word}`);
}

function wordsBegun(item: Candidate, words: readonly string[]): number {
  return words.filter((word) => sources.some(({ name }) => beginsIn(item[name], word))).length;
}

function becauseOf(item: Candidate, words: readonly string[]): string {
  const found = sources.filter(({ name }) => words.some((word) => beginsIn(item[name], word)));
  return found.map(({ words: source }) => source).join(", ");
}
