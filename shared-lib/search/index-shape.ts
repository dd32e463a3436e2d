/** How one field of the documents counts in the ranking. */
export interface FieldShape {
  readonly name: string;
  /** What one occurrence here is worth beside the other fields. */
  readonly weight: number;
}

/** What an index holds: at most eight fields, and the attributes that filters and boosts may name. */
export interface IndexShape {
  readonly fields: readonly FieldShape[];
  readonly attributes: readonly string[];
}

/** One document to be found. Fields the index does not have are refused; fields left out are empty. */
export interface SearchDocument {
  /** Unique over all kinds, for example the record's UUID. */
  readonly key: string;
  /** What it is: callout, fault note, lift. Hits are grouped by it. */
  readonly kind: string;
  readonly fields: Readonly<Record<string, string>>;
  readonly attributes?: Readonly<Record<string, string | readonly string[] | undefined>>;
  /** Milliseconds since 1970; filters by date leave out documents without one. */
  readonly date?: number;
}

/**
 * The fields of Sillbook's own index. The weights were set by judgement of what a field says about its document
 * (there is no labelled set with these fields yet).
 */
export const sillbookIndexShape: IndexShape = {
  fields: [
    { name: "title", weight: 2 },
    { name: "symptom", weight: 1.6 },
    { name: "cause", weight: 1.2 },
    { name: "fix", weight: 1 },
    { name: "body", weight: 0.8 },
    { name: "place", weight: 1.2 },
    { name: "marking", weight: 1.6 },
  ],
  attributes: ["site", "lift", "controllerFamily", "drive", "faultGroup", "state"],
};
