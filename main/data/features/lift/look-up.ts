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
  const words = text
    .trim()
    .split(/[\s,]+/)
    .filter(Boolean)
    .slice(0, 12);
  if (words.length === 0) return all.slice(0, limit).map(({ line }) => ({ line, because: "" }));
  const fuse = new Fuse(all, {
    keys: sources.map(({ name, weight }) => ({ name, weight })),
    includeScore: true,
    ignoreLocation: true,
    threshold: 0.34,
    minMatchCharLength: 1,
  });
  const asOneNumber = digitsOnly(text);
  const query =
    asOneNumber.length >= 5
      ? { $or: [{ numbers: asOneNumber }, { plate: text.trim() }] }
      : { $and: words.map((word) => ({ $or: sources.map(({ name }) => ({ [name]: word })) })) };
  return fuse
    .search(query, { limit })
    .map(({ item }) => ({ line: item.line, because: becauseOf(item, words, asOneNumber) }));
}

function becauseOf(item: Candidate, words: readonly string[], asOneNumber: string): string {
  if (asOneNumber.length >= 5 && item.numbers.includes(asOneNumber)) return "a caller's number";
  const found = sources.filter(({ name }) =>
    words.some((word) => word.length > 1 && item[name].toLowerCase().includes(word.toLowerCase())),
  );
  return found.map(({ words: source }) => source).join(", ");
}
