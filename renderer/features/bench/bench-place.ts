/** What a calculator was opened for; each part is known or not. */
export interface BenchPlace {
  readonly lift: string | null;
  readonly landing: string | null;
  readonly note: string | null;
}

const isId = (value: unknown): value is string => typeof value === "string" && value !== "";

/** The place from the address. A landing without its lift is none. */
export function placeOfSearch(search: Readonly<Record<string, unknown>>): BenchPlace {
  const lift = isId(search.lift) ? search.lift : null;
  return {
    lift,
    landing: lift !== null && isId(search.landing) ? search.landing : null,
    note: isId(search.note) ? search.note : null,
  };
}

export function searchOfPlace(place: BenchPlace): Record<string, string> {
  const { lift, landing, note } = place;
  return {
    ...(lift === null ? {} : { lift }),
    ...(lift === null || landing === null ? {} : { landing }),
    ...(note === null ? {} : { note }),
  };
}

/** Under which a half-filled calculator is kept: one for each lift and landing. */
export function draftKey(calculator: string, place: BenchPlace): string {
  return `bench/${calculator}/${place.lift ?? "no lift"}/${place.landing ?? "no landing"}`;
}
