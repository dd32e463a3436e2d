// Words that carry no subject in a question. They stay in the index, so that phrases ("out of order") can be
// checked; "not", "no", "up", "down", "on", "off", "in" and "out" are missing here on purpose: in this trade they
// are often the whole point.
const words =
  "a an and are as at be been being but by can could did do does doing for from had has have having he her him his " +
  "how i if into is it its itself just me my of or our please she should so some such than that the their them " +
  "then there these they this those to too until was we were what when where which while who whom why will with " +
  "would you your has hasnt also any about very";

const stopWords: ReadonlySet<string> = new Set(words.split(" "));

/** True for words left out of a query unless nothing else is in it. `word` is a folded term. */
export function isStopWord(word: string): boolean {
  return stopWords.has(word);
}
