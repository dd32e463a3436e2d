import type { LiftLine } from "#shared-lib/contract/lift.ts";
import type { Site } from "#shared-lib/contract/site.ts";

export type ListRow =
  | { readonly kind: "site"; readonly id: string; readonly name: string; readonly facts: string }
  | { readonly kind: "lift"; readonly id: string; readonly lift: LiftLine; readonly because: string };

type SiteLine = Pick<Site, "id" | "name" | "street" | "town"> & { readonly liftCount: number };

/** Every site in its order with its lifts under it; a site without lifts stands there too, so that they can be added. */
export function rowsBySite(sites: readonly SiteLine[], lifts: readonly LiftLine[]): readonly ListRow[] {
  const bySite = new Map<string, LiftLine[]>();
  for (const lift of lifts) bySite.set(lift.siteId, [...(bySite.get(lift.siteId) ?? []), lift]);
  return sites.flatMap((site) => [
    siteRow(site),
    ...(bySite.get(site.id) ?? []).map((lift) => liftRow(lift)),
  ]);
}

/** Lifts that were looked up, best first, each with why it was found. */
export function rowsOfHits(hits: readonly (LiftLine & { readonly because: string })[]): readonly ListRow[] {
  return hits.map((hit) => liftRow(hit, hit.because));
}

function siteRow({ id, name, street, town, liftCount }: SiteLine): ListRow {
  const count = liftCount === 1 ? "1 lift" : `${liftCount} lifts`;
  const facts = [street, town, count].filter((part) => part !== "").join(", ");
  return { kind: "site", id, name, facts };
}

function liftRow(lift: LiftLine, because = ""): ListRow {
  return { kind: "lift", id: lift.id, lift, because };
}
