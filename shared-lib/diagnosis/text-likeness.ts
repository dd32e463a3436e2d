import { analyseText } from "../search/analyse-text.ts";
import { stemWord } from "../search/stem-word.ts";

type Bag = ReadonlyMap<string, number>;

function bagOf(text: string): Map<string, number> {
  const bag = new Map<string, number>();
  for (const { term, extra } of analyseText(text)) {
    if (extra) continue;
    const stem = stemWord(term);
    bag.set(stem, (bag.get(stem) ?? 0) + 1);
  }
  return bag;
}

function cosine(one: Bag, other: Bag, weightOf: (term: string) => number): number {
  const length = (bag: Bag): number =>
    Math.sqrt([...bag].reduce((sum, [term, count]) => sum + (count * weightOf(term)) ** 2, 0));
  let product = 0;
  for (const [term, count] of one) product += count * (other.get(term) ?? 0) * weightOf(term) ** 2;
  const lengths = length(one) * length(other);
  return lengths === 0 ? 0 : product / lengths;
}

/**
 * How alike each text is to the asked one, 0 to 1: cosine of its words, a word weighing more the fewer of the texts
 * have it (Salton and Buckley 1988). Words are those of the search: folded, stemmed, numbers with their units.
 */
export function likenessTo(asked: string, texts: readonly string[]): number[] {
  const question = bagOf(asked);
  const bags = texts.map(bagOf);
  const having = new Map<string, number>();
  for (const bag of [question, ...bags])
    for (const term of bag.keys()) having.set(term, (having.get(term) ?? 0) + 1);
  const count = bags.length + 1;
  const weightOf = (term: string): number => Math.log(1 + count / (having.get(term) ?? count));
  return bags.map((bag) => Math.min(1, cosine(question, bag, weightOf)));
}
