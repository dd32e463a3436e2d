/**
 * Quantities and the units they are shown in. Inside the program every number is SI; a unit is only how a number
 * is written and read. Factors are exact by definition (international yard and pound, 1959; degree Celsius, SI).
 */
export const quantityNames = [
  "length",
  "area",
  "speed",
  "acceleration",
  "jerk",
  "time",
  "mass",
  "force",
  "energy",
  "power",
  "torque",
  "frequency",
  "voltage",
  "current",
  "resistance",
  "resistance per length",
  "counts per length",
  "bit rate",
  "count",
  "ratio",
  "angle",
  "temperature",
  "stress",
  "stiffness",
  "mass per length",
] as const;
export type Quantity = (typeof quantityNames)[number];

/** As a product of SI base units, for the dimension check of formulas; "1" is a pure number. */
export const quantityDimensions: Readonly<Record<Quantity, string>> = {
  length: "m",
  area: "m^2",
  speed: "m/s",
  acceleration: "m/s^2",
  jerk: "m/s^3",
  time: "s",
  mass: "kg",
  force: "kg*m/s^2",
  energy: "kg*m^2/s^2",
  power: "kg*m^2/s^3",
  torque: "kg*m^2/s^2",
  frequency: "1/s",
  voltage: "kg*m^2/(s^3*A)",
  current: "A",
  resistance: "kg*m^2/(s^3*A^2)",
  "resistance per length": "kg*m/(s^3*A^2)",
  "counts per length": "1/m",
  "bit rate": "1/s",
  count: "1",
  ratio: "1",
  angle: "1",
  temperature: "K",
  stress: "kg/(m*s^2)",
  stiffness: "kg/s^2",
  "mass per length": "kg/m",
};

interface UnitDefinition {
  readonly quantity: Quantity;
  /** SI value of one unit. */
  readonly factor: number;
  /** SI value at zero on this unit's scale; only temperature scales have one. */
  readonly offset?: number;
  /** Words shown after the number; the key itself where absent. */
  readonly sign?: string;
  /** The unit of the foot-and-pound system that stands in for this one. */
  readonly twin?: string;
}

const degree = Math.PI / 180;

export const units = {
  mm: { quantity: "length", factor: 0.001, twin: "in" },
  m: { quantity: "length", factor: 1, twin: "ft" },
  in: { quantity: "length", factor: 0.0254 },
  ft: { quantity: "length", factor: 0.3048 },
  "mm²": { quantity: "area", factor: 1e-6 },
  "m²": { quantity: "area", factor: 1, twin: "ft²" },
  "ft²": { quantity: "area", factor: 0.09290304 },
  "m/s": { quantity: "speed", factor: 1, twin: "ft/min" },
  "ft/min": { quantity: "speed", factor: 0.00508 },
  "m/s²": { quantity: "acceleration", factor: 1, twin: "ft/s²" },
  "ft/s²": { quantity: "acceleration", factor: 0.3048 },
  "m/s³": { quantity: "jerk", factor: 1, twin: "ft/s³" },
  "ft/s³": { quantity: "jerk", factor: 0.3048 },
  s: { quantity: "time", factor: 1 },
  ms: { quantity: "time", factor: 0.001 },
  min: { quantity: "time", factor: 60 },
  h: { quantity: "time", factor: 3600 },
  d: { quantity: "time", factor: 86_400 },
  kg: { quantity: "mass", factor: 1, twin: "lb" },
  lb: { quantity: "mass", factor: 0.45359237 },
  N: { quantity: "force", factor: 1, twin: "lbf" },
  kN: { quantity: "force", factor: 1000, twin: "lbf" },
  lbf: { quantity: "force", factor: 4.4482216152605 },
  J: { quantity: "energy", factor: 1, twin: "ft·lbf" },
  ft·lbf: { quantity: "energy", factor: 4.4482216152605 * 0.3048 },
  kWh: { quantity: "energy", factor: 3.6e6 },
  W: { quantity: "power", factor: 1 },
  kW: { quantity: "power", factor: 1000 },
  N·m: { quantity: "torque", factor: 1, twin: "lbf·ft" },
  lbf·ft: { quantity: "torque", factor: 4.4482216152605 * 0.3048 },
  Hz: { quantity: "frequency", factor: 1 },
  "1/min": { quantity: "frequency", factor: 1 / 60 },
  /** A year of 365 days, 8760 h. */
  "1/year": { quantity: "frequency", factor: 1 / (365 * 86_400), sign: "a year" },
  V: { quantity: "voltage", factor: 1 },
  mV: { quantity: "voltage", factor: 0.001 },
  A: { quantity: "current", factor: 1 },
  mA: { quantity: "current", factor: 0.001 },
  Ω: { quantity: "resistance", factor: 1 },
  kΩ: { quantity: "resistance", factor: 1000 },
  "Ω/km": { quantity: "resistance per length", factor: 0.001 },
  "mΩ/m": { quantity: "resistance per length", factor: 0.001 },
  "1/mm": { quantity: "counts per length", factor: 1000, twin: "1/in" },
  "1/in": { quantity: "counts per length", factor: 1 / 0.0254 },
  "bit/s": { quantity: "bit rate", factor: 1 },
  "kbit/s": { quantity: "bit rate", factor: 1000 },
  pieces: { quantity: "count", factor: 1, sign: "" },
  one: { quantity: "ratio", factor: 1, sign: "" },
  "%": { quantity: "ratio", factor: 0.01 },
  rad: { quantity: "angle", factor: 1 },
  "°": { quantity: "angle", factor: degree },
  "N/mm²": { quantity: "stress", factor: 1e6 },
  "kN/mm²": { quantity: "stress", factor: 1e9 },
  "N/mm": { quantity: "stiffness", factor: 1000 },
  "kg/m": { quantity: "mass per length", factor: 1, twin: "lb/ft" },
  "lb/ft": { quantity: "mass per length", factor: 0.45359237 / 0.3048 },
  K: { quantity: "temperature", factor: 1 },
  "°C": { quantity: "temperature", factor: 1, offset: 273.15, twin: "°F" },
  "°F": { quantity: "temperature", factor: 5 / 9, offset: 273.15 - 160 / 9 },
} as const satisfies Record<string, UnitDefinition>;
export type Unit = keyof typeof units;

/** "metric" as fields name it, or feet, inches and pounds where a unit has such a twin. */
export type UnitSystem = "metric" | "foot-pound";

const definitionOf = (unit: Unit): UnitDefinition => units[unit];

/** @returns the SI value of a number read in `unit`. */
export function toSi(shown: number, unit: Unit): number {
  const { factor, offset = 0 } = definitionOf(unit);
  return shown * factor + offset;
}

/** @returns the number to show in `unit` for an SI value. */
export function fromSi(value: number, unit: Unit): number {
  const { factor, offset = 0 } = definitionOf(unit);
  return (value - offset) / factor;
}

export function quantityOf(unit: Unit): Quantity {
  return definitionOf(unit).quantity;
}

/** The unit shown in place of `unit` under a system; the same one where it has no twin. */
export function unitIn(system: UnitSystem, unit: Unit): Unit {
  const twin = definitionOf(unit).twin;
  return system === "foot-pound" && twin !== undefined ? (twin as Unit) : unit;
}

/** Decimals that keep the exactness of `digits` decimals in `unit` when the number is shown in `shownUnit`. */
export function digitsIn(shownUnit: Unit, unit: Unit, digits: number): number {
  const ratio = definitionOf(shownUnit).factor / definitionOf(unit).factor;
  return Math.max(0, digits + Math.ceil(Math.log10(ratio) - 1e-9));
}

/** Decimal point, real minus sign, no minus before zero; `signed` writes the plus as well. */
export function writeNumber(value: number, digits: number, signed = false): string {
  const text = Math.abs(value).toFixed(digits);
  if (Number(text) === 0) return text;
  if (value < 0) return `\u2212${text}`;
  return signed ? `+${text}` : text;
}

export interface WritingStyle {
  readonly digits: number;
  readonly signed?: boolean;
  readonly system?: UnitSystem;
}

/** An SI value as a person reads it: number, no-break space, unit. */
export function writeQuantity(value: number, unit: Unit, style: WritingStyle): string {
  const shown = unitIn(style.system ?? "metric", unit);
  const number = writeNumber(fromSi(value, shown), digitsIn(shown, unit, style.digits), style.signed);
  const sign = definitionOf(shown).sign ?? shown;
  return sign === "" ? number : `${number}\u00a0${sign}`;
}
