import { analyseQuery } from "#shared-lib/search/analyse-query.ts";
import { type SearchDocument, sillbookIndexShape } from "#shared-lib/search/index-shape.ts";
import { SearchIndex } from "#shared-lib/search/search-index.ts";
import { quantile } from "./rank-measures.ts";
import { seededRandom, withOneError } from "./typing-errors.ts";

const things = (
  "doors,car door,landing door,door operator,light curtain,brake,drive,encoder,zone sensor,slowdown switch," +
  "governor rope,safety gear,car lamp,alarm button,intercom,landing button,indicator,controller,relay,contactor," +
  "travelling cable,guide shoe,roller guide,buffer,pit stop switch,hydraulic valve,oil tank,ram seal,fan,battery"
).split(",");
const troubles = (
  "keeps reopening,not working,stuck,noisy,worn,dead,intermittent,too slow,swapped,wrong order,broken,loose," +
  "overheating,leaking,wet after flooding,misaligned,slipping,tripped,missing,vibrating,not lit,jammed,bent," +
  "stops 20 mm low,stops 35mm high,fault code shown,no answer,burnt smell,out of level,replaced last week"
).split(",");
const asides = (
  "one person inside,nobody inside,tenant called twice,second call today,only in the morning,since the power cut," +
  "after cleaning,wheelchair user waiting,reset did not help,came back by itself,happens going down,going up only," +
  "caretaker on site,key at reception,please ring before,left out of service,works again,display reads"
).split(",");
const syllables = "bar kit ros sal tun wen dor mar lin fos gul per ter vin hal cob".split(" ");

const siteCount = 2000;
const rareShare = 0.1;

/** Short notes as an office writes them, with a long tail of rare names and markings; the same for every run. */
export function* generateNotes(count: number, seed: number): Generator<SearchDocument> {
  const random = seededRandom(seed);
  const pick = <Item>(list: readonly Item[]): Item => list[Math.floor(random() * list.length)] as Item;
  const invent = (length: number) => Array.from({ length }, () => pick(syllables)).join("");
  const sites = Array.from({ length: siteCount }, () => invent(3));
  for (let number = 0; number < count; number++) {
    const name = pick(sites);
    const rare = random() < rareShare ? ` ${invent(4)}` : "";
    const marking = `${pick(["X", "K", "F", "S"])}${Math.floor(random() * 40)}:${Math.floor(random() * 30)}`;
    const floor = 1 + Math.floor(random() * 14);
    yield {
      key: `018f${number.toString(16).padStart(8, "0")}-0000-7000-8000-${Math.floor(random() * 2 ** 40).toString(16)}`,
      kind: random() < 0.02 ? "faultNote" : "callout",
      fields: {
        symptom: `${pick(things)} ${pick(troubles)} at floor ${floor}, ${pick(asides)}${rare}`,
        cause: random() < 0.5 ? `${pick(things)} ${pick(troubles)}, terminal ${marking}` : "",
        place: `${name} house`,
      },
      attributes: {
        site: name,
        lift: `lift-${Math.floor(random() * 2000)}`,
        controllerFamily: pick(["Tern", "Dunlin", "Petrel"]),
        drive: pick(["geared", "gearless", "hydraulic"]),
        faultGroup: pick(things),
      },
      date: 1_600_000_000_000 + number * 600_000,
    };
  }
}

function generateQueries(count: number, seed: number): string[] {
  const random = seededRandom(seed);
  const pick = <Item>(list: readonly Item[]): Item => list[Math.floor(random() * list.length)] as Item;
  return Array.from({ length: count }, () => {
    const text = `${pick(things)} ${pick(troubles)} ${random() < 0.4 ? pick(asides) : ""}`.trim();
    return random() < 0.3 ? withOneError(text, random) : text;
  });
}

function memory(): number {
  (globalThis as { gc?: () => void }).gc?.();
  const { heapUsed, arrayBuffers } = process.memoryUsage();
  return (heapUsed + arrayBuffers) / 1e6;
}

function timed<Value>(label: string, work: () => Value): Value {
  const cpu = process.cpuUsage();
  const start = performance.now();
  const value = work();
  const wall = performance.now() - start;
  const { user, system } = process.cpuUsage(cpu);
  // Processor time stands beside it because it hardly changes when other programs use the machine.
  console.log(
    `${label.padEnd(52)} ${wall.toFixed(0)} ms, processor ${((user + system) / 1000).toFixed(0)} ms`,
  );
  return value;
}

function timeEach<Item>(label: string, items: readonly Item[], work: (item: Item) => void): void {
  const times = items.map((item) => {
    const start = performance.now();
    work(item);
    return performance.now() - start;
  });
  const show = (share: number) => quantile(times, share).toFixed(2);
  console.log(`${label.padEnd(52)} p50 ${show(0.5)} ms, p95 ${show(0.95)} ms, worst ${show(1)} ms`);
}

export async function run(args: readonly string[]): Promise<void> {
  const count = Number(args[0] ?? 100_000);
  const notes = [...generateNotes(count, 7)];
  const before = memory();
  const index = new SearchIndex(sillbookIndexShape);
  timed(`build from ${count} notes`, () => index.addAll(notes));
  console.log(`words in use: ${index.wordCount}`);
  console.log(
    `memory: ${(memory() - before).toFixed(1)} MB in all, ${(index.arrayBytes / 1e6).toFixed(1)} MB of it arrays`,
  );
  const queries = generateQueries(1000, 11);
  const search = (text: string, typing: boolean) =>
    index.search(analyseQuery(text, index.words, { typing }), { limitPerKind: 10 });
  timed("first query", () => search(queries[0] as string, false));
  timeEach("query", queries, (text) => search(text, false));
  timeEach("query while typing (cut in its last word)", queries, (text) => search(text.slice(0, -2), true));
  timeEach("query with filters and boosts", queries, (text) =>
    index.search(analyseQuery(text, index.words), {
      limitPerKind: 10,
      filters: { drive: { anyOf: ["geared"] } },
      boosts: [{ attribute: "controllerFamily", anyOf: ["Tern"], factor: 1.2 }],
    }),
  );
  const long = queries.join(" ").slice(0, 10_000);
  timeEach("query of 10,000 characters", Array(50).fill(long) as string[], (text) => search(text, false));
  timeEach("update of one note", notes.slice(0, 5000), (note) => index.add(note));
  timed("compaction", () => index.compact());
  const bytes = timed("snapshot written", () => index.toSnapshot("end"));
  console.log(`snapshot: ${(bytes.length / 1e6).toFixed(1)} MB`);
  timed("snapshot read", () => SearchIndex.fromSnapshot(bytes, sillbookIndexShape));
}
