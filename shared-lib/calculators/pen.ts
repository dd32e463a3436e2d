import { quantityOf, type Unit, type UnitSystem, writeQuantity } from "../quantities.ts";
import type { Comparison, ValueLine } from "./result.ts";
import { type Source, writeSource } from "./source.ts";

/** Numbers a limit and a computed value may differ by and still count as equal: rounding of the arithmetic. */
const slack = 1e-9;

export interface CompareRequest {
  readonly key: string;
  readonly label: string;
  readonly value: number | null;
  readonly unit: Unit;
  readonly digits: number;
  readonly signed?: boolean;
  readonly least?: number | null;
  readonly most?: number | null;
  readonly source: Source;
  /** Words for the limit, as in "the site's own tolerance"; the source is added behind. */
  readonly limitWords: string;
  /** Why there is no verdict; makes `holds` null. */
  readonly open?: string;
  readonly field?: string;
}

/** Writes numbers in the person's units and puts each against its own limit. */
export interface Pen {
  readonly write: (value: number, unit: Unit, digits: number, signed?: boolean) => string;
  readonly value: (
    key: string,
    label: string,
    value: number,
    unit: Unit,
    digits: number,
    signed?: boolean,
  ) => ValueLine;
  readonly compare: (request: CompareRequest) => Comparison;
}

const isInside = (value: number, least: number | null, most: number | null): boolean =>
  (least === null || value >= least - slack * Math.max(1, Math.abs(least))) &&
  (most === null || value <= most + slack * Math.max(1, Math.abs(most)));

function judge(request: CompareRequest): { holds: boolean | null; word: Comparison["word"] } {
  const { value, least = null, most = null } = request;
  if (request.open !== undefined) {
    return { holds: null, word: least === null && most === null ? "no limit given" : "cannot be said" };
  }
  if (value === null) return { holds: null, word: "cannot be said" };
  const holds = isInside(value, least, most);
  return { holds, word: holds ? "within" : "outside" };
}

export function makePen(system: UnitSystem): Pen {
  const write: Pen["write"] = (value, unit, digits, signed = false) =>
    writeQuantity(value, unit, { digits, signed, system });
  return {
    write,
    value: (key, label, value, unit, digits, signed = false) => ({
      key,
      label,
      value,
      quantity: quantityOf(unit),
      unit,
      digits,
      signed,
      shown: write(value, unit, digits, signed),
    }),
    compare: (request) => {
      const { holds, word } = judge(request);
      const { value, unit, digits, signed = false } = request;
      return {
        key: request.key,
        label: request.label,
        value,
        quantity: quantityOf(unit),
        unit,
        digits,
        signed,
        limit: { least: request.least ?? null, most: request.most ?? null, source: request.source },
        holds,
        word,
        reading: value === null ? request.label : `${request.label} ${write(value, unit, digits, signed)}`,
        rest: request.open ?? `${request.limitWords}, ${writeSource(request.source)}.`,
        field: request.field ?? null,
      };
    },
  };
}
