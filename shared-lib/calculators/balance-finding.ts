import type { balanceFields } from "./balance-fields.ts";
import {
  balanceOfEmptyRuns,
  crossingInterval,
  crossingOf,
  fitLine,
  type Interval,
  type Line,
  type Reading,
} from "./balance-physics.ts";
import type { ValuesOf } from "./field.ts";
import type { Problem } from "./result.ts";

export type BalanceValues = ValuesOf<typeof balanceFields>;

export const confidence = 0.95;

export interface Lines {
  readonly up: Line;
  readonly down: Line;
  readonly readingsUp: readonly Reading[];
  readonly readingsDown: readonly Reading[];
}

export interface Finding {
  /** null where the runs give no line each. */
  readonly lines: Lines | null;
  /** Balanced share; null where nothing sensible comes out. */
  readonly balance: number | null;
  readonly interval: Interval | null;
  /** Why there is no balance. */
  readonly reason: string;
}

type Row = { readonly load: number; readonly up: number | undefined; readonly down: number | undefined };

const rowsOf = (values: BalanceValues): readonly Row[] =>
  (values.method === "current" ? values.currents : values.powers) ?? [];

function readingsOf(rows: readonly Row[], side: "up" | "down"): Reading[] {
  return rows.flatMap((row) => {
    const value = row[side];
    return value === undefined ? [] : [{ load: row.load, value }];
  });
}

/** A balance outside the empty and the full car is no balance but a wrong reading. */
const isSensible = (balance: number): boolean => balance >= 0 && balance <= 1;

function ofEmptyRuns(values: BalanceValues): Finding {
  const { ratedLoad = 1, powerUp = 0, powerDown = 0, speedUp = 1, speedDown = 1 } = values;
  const balance = balanceOfEmptyRuns({ ratedLoad, powerUp, powerDown, speedUp, speedDown });
  const none = { lines: null, interval: null };
  if (isSensible(balance)) return { ...none, balance, reason: "" };
  return {
    ...none,
    balance: null,
    reason:
      "These powers give no balance between the empty and the full car: up and down exchanged, or a sign missing.",
  };
}

export function findBalance(values: BalanceValues): Finding {
  if (values.method === "empty") return ofEmptyRuns(values);
  const rows = rowsOf(values);
  const readingsUp = readingsOf(rows, "up");
  const readingsDown = readingsOf(rows, "down");
  const up = fitLine(readingsUp);
  const down = fitLine(readingsDown);
  if (up === null || down === null) {
    const reason = "Each direction needs readings at two loads or more.";
    return { lines: null, balance: null, interval: null, reason };
  }
  const lines = { up, down, readingsUp, readingsDown };
  const crossing = crossingOf(up, down);
  if (crossing === null || !isSensible(crossing)) {
    const reason = "The lines up and down do not meet between the empty and the full car.";
    return { lines, balance: null, interval: null, reason };
  }
  return { lines, balance: crossing, interval: crossingInterval(up, down, confidence), reason: "" };
}

/** What in the readings looks typed or taken wrong. */
export function doubtsOf(values: BalanceValues, { lines }: Finding): Problem[] {
  if (lines === null || lines.up.slope >= 0 || lines.down.slope <= 0) return [];
  const field = values.method === "current" ? "currents" : "powers";
  const sentence =
    "Up falls and down rises with the load: are the two columns exchanged? The meeting point is the same.";
  return [{ field, sentence }];
}

export interface Extent {
  readonly least: number;
  readonly most: number;
}

/** Loads between which both directions were read. */
export function loadsOf({ readingsUp, readingsDown }: Lines): Extent {
  const loads = [...readingsUp, ...readingsDown].map(({ load }) => load);
  return { least: Math.min(...loads), most: Math.max(...loads) };
}
