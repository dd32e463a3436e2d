import { editDistance } from "#shared-lib/search/edit-distance.ts";
import { foldWord } from "#shared-lib/search/fold-word.ts";
import type { Store } from "../../store.ts";
import { liftsByNameSql, sitesByNameSql } from "./import.sql.ts";

interface NamedLift {
  readonly id: string;
  readonly name: string;
  readonly plateNumber: string;
  readonly siteId: string;
  readonly site: string;
}

export interface LiftWords {
  readonly site: string;
  readonly lift: string;
  readonly plateNumber: string;
}

/** A lift as an old table could mean it. */
export interface SimilarLift {
  readonly id: string;
  readonly title: string;
}

const mostSimilar = 3;
/** Longer names may hold two slips of the pen, shorter ones one. */
const longName = 8;
/** Says only that a lift is meant: "Lift 2", "Elevator No. 2" and "2" are one name. */
const emptyWords = new Set(["lift", "elevator", "no", "nr", "number", "unit", "the"]);

/** Finds the lift that an old table means. Made for one command: what is added in between is told to it. */
export class LiftFinder {
  readonly #byName = new Map<string, string>();
  readonly #byPlate = new Map<string, string>();
  readonly #sites = new Map<string, string>();
  readonly #known: { readonly id: string; readonly title: string; readonly words: LiftWords }[] = [];
  readonly #similar = new Map<string, readonly SimilarLift[]>();

  constructor(store: Store) {
    for (const lift of store.all<NamedLift>(liftsByNameSql)) {
      this.add({ site: lift.site, lift: lift.name, plateNumber: lift.plateNumber }, lift.id);
    }
    for (const { id, name } of store.all<{ id: string; name: string }>(sitesByNameSql))
      this.addSite(name, id);
  }

  /** The one lift of that plate number, else of that site and name. */
  find({ site, lift, plateNumber }: LiftWords): string | null {
    const byPlate = plateNumber ? this.#byPlate.get(plain(plateNumber)) : undefined;
    return byPlate ?? (site && lift ? this.#byName.get(nameKey(site, lift)) : undefined) ?? null;
  }

  findSite(site: string): string | null {
    return this.#sites.get(plain(site)) ?? null;
  }

  /** Lifts it could be where none is named so: a slip of the pen in the site, or in the plate number. */
  couldBe(words: LiftWords): readonly SimilarLift[] {
    const key = liftWordsOf(words).toLowerCase();
    const known = this.#similar.get(key);
    if (known) return known;
    const found = this.#known.filter((lift) => isSimilar(lift.words, words)).slice(0, mostSimilar);
    const similar = found.map(({ id, title }) => ({ id, title }));
    this.#similar.set(key, similar);
    return similar;
  }

  add(words: LiftWords, id: string): void {
    const { site, lift, plateNumber } = words;
    this.#byName.set(nameKey(site, lift), id);
    if (plateNumber) this.#byPlate.set(plain(plateNumber), id);
    this.#known.push({ id, title: `${site}, ${lift}`, words });
  }

  addSite(name: string, id: string): void {
    this.#sites.set(plain(name), id);
  }
}

/** "Site / Lift" as the table writes it: the key of a person's decision in the mapping. */
export function liftWordsOf({ site, lift, plateNumber }: LiftWords): string {
  return [site, lift].filter(Boolean).join(" / ") || plateNumber;
}

function isSimilar(known: LiftWords, asked: LiftWords): boolean {
  if (!asked.site) return asked.plateNumber !== "" && isSlip(known.plateNumber, asked.plateNumber);
  return plain(known.lift) === plain(asked.lift) && isSlip(known.site, asked.site);
}

/** Nearly the same words, and the same numbers: "House 12" is another house than "House 13". */
function isSlip(known: string, asked: string): boolean {
  const [one, other] = [plain(known), plain(asked)];
  const limit = Math.min(one.length, other.length) >= longName ? 2 : 1;
  if (one.replace(/\D/g, "") !== other.replace(/\D/g, "")) return false;
  return editDistance(one, other, limit) <= limit;
}

function nameKey(site: string, lift: string): string {
  return `${plain(site)}|${plain(lift)}`;
}

function plain(text: string): string {
  const words = foldWord(text)
    .split(/[^\p{L}\p{N}]+/u)
    .filter(Boolean);
  const telling = words.filter((word) => !emptyWords.has(word));
  return (telling.length > 0 ? telling : words).map((word) => word.replace(/^0+(?=\d)/, "")).join(" ");
}
