import { calloutListLink } from "../desk/callout-list-link.ts";

/** Where a list of exactly these callouts stands, as the router takes it. */
export function calloutsPlace(
  ids: readonly string[],
  title: string,
): { readonly to: "/desk"; readonly search: Record<string, unknown> } {
  const { to, search } = calloutListLink(ids, title);
  return { to, search: { ...search } };
}
