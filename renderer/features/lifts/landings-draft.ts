import type { Landing } from "#shared-lib/contract/lift.ts";
import type { InputOf } from "#shared-lib/contract/operations.ts";
import { formatNumber } from "#shared-lib/format.ts";
import { readNumber } from "#shared-lib/number-words.ts";

/** One row of the landings table while it is edited; `key` tells rows apart that are not saved yet. */
export interface LandingRow {
  readonly key: string;
  readonly id: string | null;
  readonly marking: string;
  readonly name: string;
  /** As typed, m above the reference landing. */
  readonly level: string;
  readonly entrances: Landing["entrances"];
}

export interface LandingsDraft {
  readonly open: boolean;
  /** The landings the table was opened from, with their versions. */
  readonly seen: readonly { readonly id: string; readonly version: number }[];
  readonly rows: readonly LandingRow[];
  readonly tried: boolean;
}

const levelDecimals = 3;

/** From the highest landing down, as they stand on the drawing. */
export function draftOfLandings(landings: readonly Landing[], open: boolean): LandingsDraft {
  const rows = [...landings]
    .sort((a, b) => b.level - a.level)
    .map(({ id, marking, name, level, entrances }) => ({
      key: id,
      id,
      marking,
      name,
      level: formatNumber(level, levelDecimals).replace(/0$/, ""),
      entrances,
    }));
  return { open, seen: landings.map(({ id, version }) => ({ id, version })), rows, tried: false };
}

export function addLanding(draft: LandingsDraft, key: string): LandingsDraft {
  const entrances = draft.rows[0]?.entrances ?? "front";
  const row: LandingRow = { key, id: null, marking: "", name: "", level: "", entrances };
  return { ...draft, rows: [row, ...draft.rows] };
}

export function changeLanding(draft: LandingsDraft, key: string, part: Partial<LandingRow>): LandingsDraft {
  return { ...draft, rows: draft.rows.map((row) => (row.key === key ? { ...row, ...part } : row)) };
}

export function removeLanding(draft: LandingsDraft, key: string): LandingsDraft {
  return { ...draft, rows: draft.rows.filter((row) => row.key !== key) };
}

/** Moves marking, name and entrances one row up or down; the levels stay where they are, because the shaft does. */
export function moveLanding(draft: LandingsDraft, key: string, by: 1 | -1): LandingsDraft {
  const from = draft.rows.findIndex((row) => row.key === key);
  const one = draft.rows[from];
  const other = draft.rows[from + by];
  if (one === undefined || other === undefined) return draft;
  const rows = [...draft.rows];
  rows[from] = { ...other, level: one.level };
  rows[from + by] = { ...one, level: other.level };
  return { ...draft, rows };
}

export interface LandingsReading {
  readonly landings: InputOf<"lift.setLandings">["landings"] | null;
  /** By key of the row, then by field. */
  readonly problems: Readonly<Record<string, { readonly marking?: string; readonly level?: string }>>;
}

const lowestLevel = -500;
const highestLevel = 1000;

/** @returns the landings to save, or null with a sentence at each field that does not fit. */
export function readLandings(rows: readonly LandingRow[]): LandingsReading {
  const problems: Record<string, { marking?: string; level?: string }> = {};
  const landings = rows.map((row) => {
    const marking = row.marking.trim();
    const level = readNumber(row.level);
    const wrong: { marking?: string; level?: string } = {};
    const twin = rows.some((other) => other.key !== row.key && other.marking.trim() === marking);
    if (marking === "") wrong.marking = "Write what stands at the landing.";
    else if (marking.length > 8) wrong.marking = "At most 8 characters, as on the button.";
    else if (twin) wrong.marking = `Two landings are marked ${marking}.`;
    if (level.kind === "empty") wrong.level = "Give the level in metres.";
    else if (level.kind === "unclear") wrong.level = level.problem;
    else if (level.number < lowestLevel || level.number > highestLevel)
      wrong.level = "Levels are in metres, from −500 to 1000.";
    else if (rows.some((other) => other.key !== row.key && sameLevel(other.level, level.number)))
      wrong.level = "Two landings stand on this level.";
    if (wrong.marking !== undefined || wrong.level !== undefined) problems[row.key] = wrong;
    return {
      ...(row.id === null ? {} : { id: row.id }),
      marking,
      name: row.name.trim(),
      level: level.kind === "number" ? level.number : 0,
      entrances: row.entrances,
    };
  });
  return { landings: Object.keys(problems).length === 0 ? landings : null, problems };
}

function sameLevel(text: string, level: number): boolean {
  const reading = readNumber(text);
  return reading.kind === "number" && reading.number === level;
}
