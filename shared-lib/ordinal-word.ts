const words = ["First", "Second", "Third", "Fourth", "Fifth", "Sixth", "Seventh", "Eighth", "Ninth", "Tenth"];

/** "First" for 1; from eleven on with figures: "11th", "21st", "112th". */
export function ordinalWord(place: number): string {
  const word = words[place - 1];
  if (word !== undefined) return word;
  const lastTwo = place % 100;
  const isTeen = lastTwo >= 11 && lastTwo <= 13;
  const ending = isTeen ? "th" : ({ 1: "st", 2: "nd", 3: "rd" }[place % 10] ?? "th");
  return `${place}${ending}`;
}
