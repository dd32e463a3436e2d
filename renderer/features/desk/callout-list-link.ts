/** Where a list of callouts stands: spread into a router `Link`, or pass to `navigate`. */
export interface CalloutListAddress {
  readonly to: "/desk";
  readonly search: CalloutListSearch;
}

/** The part of the address that turns Desk into a list of callouts. */
export interface CalloutListSearch {
  /** Which callouts; left out where `ids` are given. */
  readonly list?: CalloutListName;
  /** Ids joined by a dot: they stay readable in an address. */
  readonly ids?: string;
  /** What the list shows, in words: "Repeats of Saltpan Court, Lift 1". */
  readonly title?: string;
}

/** A list of exactly these callouts, at most 5000 of them. */
export function calloutListLink(ids: readonly string[], title: string): CalloutListAddress {
  return { to: "/desk", search: { ids: ids.join("."), title } };
}

export interface CalloutListChoice {
  readonly ids: readonly string[] | null;
  readonly list: CalloutListName;
  readonly title: string;
}

/** What the address asks for; null where it asks for no list. Anything can stand in an address. */
export function readCalloutListSearch(search: Readonly<Record<string, unknown>>): CalloutListChoice | null {
  const title = typeof search.title === "string" && search.title !== "" ? search.title : null;
  const ids = readIds(search.ids);
  if (ids !== null) return { ids, list: "all", title: title ?? "Callouts" };
  const list = calloutLists.find((one) => one === search.list);
  return list === undefined ? null : { ids: null, list, title: title ?? listTitles[list] };
}

export const calloutLists = ["open", "closed", "left out", "all"] as const;
export type CalloutListName = (typeof calloutLists)[number];

export const listTitles: { readonly [Name in CalloutListName]: string } = {
  open: "Open callouts",
  closed: "Closed callouts",
  "left out": "Left out of service",
  all: "All callouts",
};
const idPattern = /^[0-9a-f]{8}(-[0-9a-f]{4}){3}-[0-9a-f]{12}$/i;

function readIds(text: unknown): readonly string[] | null {
  if (typeof text !== "string") return null;
  return text
    .split(".")
    .filter((id) => idPattern.test(id))
    .slice(0, 5000);
}
