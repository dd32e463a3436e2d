import { digitsIn, fromSi, type Unit, type UnitSystem, unitIn, units } from "#shared-lib/quantities.ts";

/** What stands behind a number; undefined for a plain count or ratio, the units that have a sign of their own: none. */
export function unitSign(unit: Unit): string | undefined {
  const definition = units[unit];
  if (!("sign" in definition)) return unit;
  return definition.sign === "" ? undefined : definition.sign;
}

const isUnit = (name: string): name is Unit => name in units;

/** How the numbers of one axis or column are shown in a system. */
export interface ShownUnit {
  readonly sign: string;
  readonly digits: number;
  readonly of: (value: number) => number;
}

/** An unknown unit name of a drawing is shown as it stands, its numbers untouched. */
export function shownUnit(name: string, digits: number, system: UnitSystem): ShownUnit {
  if (!isUnit(name)) return { sign: name, digits, of: (value) => value };
  const unit = unitIn(system, name);
  return {
    sign: unitSign(unit) ?? "",
    digits: digitsIn(unit, name, digits),
    of: (value) => fromSi(value, unit),
  };
}
