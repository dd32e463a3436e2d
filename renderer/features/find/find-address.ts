import type { InputOf } from "#shared-lib/contract/operations.ts";
import {
  type DriveKind,
  driveKinds,
  type FaultGroup,
  faultGroups,
  type NoteStatus,
  noteStatuses,
} from "#shared-lib/words.ts";

export type SearchFilter = NonNullable<InputOf<"search.find">["filter"]>;

/** What the address of Find says. Everything a colleague needs to see the same results. */
export interface FindAddress {
  readonly q: string;
  /** Lift in whose context is searched; with `only`, the one lift whose records are shown. */
  readonly lift: string | null;
  readonly only: boolean;
  readonly site: string | null;
  readonly controller: string | null;
  readonly drive: DriveKind | null;
  readonly group: FaultGroup | null;
  /** First day, as in 2026-11-24. */
  readonly since: string | null;
  /** Of the list of all fault notes, which stands where no words are. */
  readonly status: NoteStatus | null;
  /** Words that are to be taken as typed. */
  readonly keep: readonly string[];
}

const idPattern = /^[0-9a-f]{8}(-[0-9a-f]{4}){3}-[0-9a-f]{12}$/i;
const dayPattern = /^\d{4}-\d{2}-\d{2}$/;
const longestControllerFamily = 200;
const longestKeptWord = 100;
const mostKeptWords = 50;

/** Anything can stand in an address: what fits nothing is left out. */
export function readFindAddress(search: Readonly<Record<string, unknown>>): FindAddress {
  return {
    // The router reads "4711" as a number; it was typed as words.
    q: typeof search.q === "string" ? search.q : typeof search.q === "number" ? String(search.q) : "",
    lift: readId(search.lift),
    only: search.only === true && readId(search.lift) !== null,
    site: readId(search.site),
    controller: readController(search.controller),
    drive: driveKinds.find((kind) => kind === search.drive) ?? null,
    group: faultGroups.find((group) => group === search.group) ?? null,
    since: readDay(search.since),
    status: noteStatuses.find((status) => status === search.status) ?? null,
    keep: Array.isArray(search.keep)
      ? search.keep
          .filter((word) => typeof word === "string" && word !== "" && word.length <= longestKeptWord)
          .slice(0, mostKeptWords)
      : [],
  };
}

/** The shortest address that says the same. */
export function writeFindAddress(address: FindAddress): Record<string, unknown> {
  const { q, lift, only, site, controller, drive, group, since, status, keep } = address;
  const said = { q, lift, only, site, controller, drive, group, since, status };
  const entries = Object.entries(said).filter(
    ([, value]) => value !== null && value !== "" && value !== false,
  );
  return { ...Object.fromEntries(entries), ...(keep.length > 0 ? { keep: [...keep] } : {}) };
}

/** The filters as the search takes them. A day begins at its local midnight. */
export function filterOf(address: FindAddress): SearchFilter {
  const { lift, only, site, controller, drive, group, since } = address;
  return {
    ...(only && lift !== null ? { liftId: lift } : {}),
    ...(site === null ? {} : { siteId: site }),
    ...(controller === null ? {} : { controllerFamily: controller }),
    ...(drive === null ? {} : { driveKind: drive }),
    ...(group === null ? {} : { group }),
    ...(since === null ? {} : { since: new Date(`${since}T00:00:00`).toISOString() }),
  };
}

export function isFiltered(address: FindAddress): boolean {
  return Object.keys(filterOf(address)).length > 0;
}

/** The same question without any filter; the words and the lift stay. */
export function withoutFilters(address: FindAddress): FindAddress {
  return { ...address, only: false, site: null, controller: null, drive: null, group: null, since: null };
}

function readId(value: unknown): string | null {
  return typeof value === "string" && idPattern.test(value) ? value : null;
}

function readController(value: unknown): string | null {
  const text = typeof value === "number" ? String(value) : value;
  return typeof text === "string" && text !== "" && text.length <= longestControllerFamily ? text : null;
}

function readDay(value: unknown): string | null {
  if (typeof value !== "string" || !dayPattern.test(value)) return null;
  return Number.isNaN(new Date(`${value}T00:00:00`).getTime()) ? null : value;
}
