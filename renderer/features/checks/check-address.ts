const idPattern = /^[0-9a-f]{8}(-[0-9a-f]{4}){3}-[0-9a-f]{12}$/i;

/** What the address of Checks chooses beforehand. */
export interface ChecksAddress {
  readonly lift: string | null;
  readonly plan: string | null;
  readonly callout: string | null;
  readonly visit: string | null;
}

const idOf = (value: unknown): string | null =>
  typeof value === "string" && idPattern.test(value) ? value : null;

/** Anything can stand in an address: what fits nothing is left out. A callout or visit counts only with its lift. */
export function readChecksAddress(search: Readonly<Record<string, unknown>>): ChecksAddress {
  const lift = idOf(search.lift);
  return {
    lift,
    plan: typeof search.plan === "string" && search.plan !== "" ? search.plan : null,
    callout: lift === null ? null : idOf(search.callout),
    visit: lift === null ? null : idOf(search.visit),
  };
}
