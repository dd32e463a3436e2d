interface Unit {
  readonly symbol: string;
  readonly factor: number;
}

// Each line: the symbol a quantity is kept under, the factor to it, and every way people write it. Factors join
// what is one measure ("2 cm" and "20 mm"), they are not a converter: inches stay inches.
const unitLines: readonly (readonly [symbol: string, factor: number, ...words: string[]])[] = [
  ["mm", 1, "mm", "mms", "millimetre", "millimetres", "millimeter", "millimeters"],
  ["mm", 10, "cm", "cms", "centimetre", "centimetres", "centimeter", "centimeters"],
  ["mm", 1000, "m", "mtr", "mtrs", "metre", "metres", "meter", "meters"],
  ["in", 1, "in", "inch", "inches"],
  ["ft", 1, "ft", "foot", "feet"],
  ["ms", 1, "ms", "msec", "msecs", "millisecond", "milliseconds"],
  ["ms", 1000, "s", "sec", "secs", "second", "seconds"],
  ["min", 1, "min", "mins", "minute", "minutes"],
  ["h", 1, "h", "hr", "hrs", "hour", "hours"],
  ["v", 1, "v", "volt", "volts", "vdc", "vac"],
  ["v", 1000, "kv", "kilovolt", "kilovolts"],
  ["a", 1, "a", "amp", "amps", "ampere", "amperes"],
  ["a", 0.001, "ma", "milliamp", "milliamps"],
  ["ohm", 1, "ohm", "ohms", "ω", "r"],
  ["ohm", 1000, "kohm", "kohms", "kω"],
  ["w", 1, "w", "watt", "watts"],
  ["w", 1000, "kw", "kilowatt", "kilowatts"],
  ["hz", 1, "hz", "hertz"],
  ["kg", 1, "kg", "kgs", "kilo", "kilos", "kilogram", "kilograms"],
  ["kg", 1000, "t", "ton", "tons", "tonne", "tonnes"],
  ["m/s", 1, "m/s", "mps"],
  ["bar", 1, "bar", "bars"],
  ["degree", 1, "°c", "degc", "degree", "degrees", "deg", "degs"],
  ["%", 1, "percent", "pct"],
  ["rpm", 1, "rpm"],
  ["bit/s", 1000, "kbit", "kbits", "kbps", "kbaud"],
];

const units = new Map<string, Unit>();
for (const [symbol, factor, ...words] of unitLines) {
  for (const word of words) {
    units.set(word, { symbol, factor });
  }
}

const ordinalWords: ReadonlyMap<string, number> = new Map(
  [
    ..."first second third fourth fifth sixth seventh eighth ninth tenth".split(" "),
    ..."eleventh twelfth thirteenth fourteenth fifteenth sixteenth seventeenth".split(" "),
    ..."eighteenth nineteenth twentieth".split(" "),
  ].map((word, index) => [word, index + 1]),
);
const ordinalForm = /^(\d{1,3})(?:st|nd|rd|th)$/;
const numberForm = /^\d+(?:[.,]\d+)*$/;
const thousandsForm = /^[1-9]\d{0,2}(?:,\d{3})+$/;
const floorWords = new Set("floor flr fl level lvl lev landing ldg storey story hall".split(" "));

/** True for words that name a landing when a number stands beside them. */
export function isFloorWord(word: string): boolean {
  return floorWords.has(word);
}

/** The number in "3rd" or "third"; undefined for other words. */
export function ordinalOf(word: string): number | undefined {
  const written = ordinalForm.exec(word);
  return written ? Number(written[1]) : ordinalWords.get(word);
}

/** "3rd" from 3: how an ordinal is kept in the index, whichever way it was written. */
export function ordinalTerm(count: number): string {
  const tens = count % 100;
  const ending = tens > 10 && tens < 14 ? "th" : (["th", "st", "nd", "rd"][count % 10] ?? "th");
  return `${count}${ending}`;
}

/** The term that stands for a landing: "3rd flr", "floor 3" and "third landing" all give `floor:3`. */
export function floorTerm(floor: number | string): string {
  return `floor:${floor}`;
}

/** True for "20", "0.5", "0,5" and "1,100". */
export function isNumber(word: string): boolean {
  return numberForm.test(word);
}

/**
 * One term for one measure: quantityTerm("2", "cm") and quantityTerm("20", "millimetres") are "20mm".
 * Undefined when the word is no unit known here. A comma is a decimal sign unless it separates thousands.
 */
export function quantityTerm(number: string, unitWord: string): string | undefined {
  const unit = units.get(unitWord);
  if (!unit || !isNumber(number)) {
    return undefined;
  }
  const plain = thousandsForm.test(number) ? number.replaceAll(",", "") : number.replace(",", ".");
  const value = Number(plain) * unit.factor;
  return Number.isFinite(value) ? `${Number(value.toPrecision(9))}${unit.symbol}` : undefined;
}
