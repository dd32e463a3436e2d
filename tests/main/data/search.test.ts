import { afterEach, beforeEach, describe, expect, test } from "vitest";
import { addLift, openTestCore, type TestCore } from "./support/test-core.ts";

let bench: TestCore;
let kittiwake: string;
let saltpan: string;

beforeEach(async () => {
  bench = await openTestCore();
  kittiwake = addLift(bench).liftId;
  saltpan = addLift(bench, "Lift 1", "Saltpan Court").liftId;
  for (const [liftId, said, displayReading] of [
    [kittiwake, "stops a hand's breadth too low at 2", ""],
    [saltpan, "doors keep reopening at the lobby", "E42"],
    [saltpan, "no light in the car", ""],
  ] as const) {
    bench.ask("callout.log", { liftId, liftWords: "", said, inside: "nobody", displayReading });
    bench.minutes(60);
  }
});
afterEach(() => bench.close());

type Found = ReturnType<typeof find>;
function find(text: string, more: object = {}) {
  return bench.ask("search.find", { text, ...more });
}
const titles = (found: Found, kind: string): string[] =>
  found.groups.find((group) => group.kind === kind)?.hits.map((hit) => hit.title) ?? [];

describe.each([
  ["while the ranked index is being built", () => undefined],
  ["with the ranked index", () => bench.core.search.buildAll()],
])("%s", (_words, prepare) => {
  beforeEach(prepare);

  test("finds callouts by words, by what a display shows, by lift", () => {
    expect(titles(find("reopening doors"), "callout")[0]).toBe("“doors keep reopening at the lobby”");
    expect(titles(find("E42"), "callout")).toEqual(["“doors keep reopening at the lobby”"]);
    expect(find("saltpan court").groups[0]?.kind).toBe("lift");
    expect(titles(find("zone signals reversed"), "calculator")).toContain("Zone sensors and magnets");
  });

  test("marks what matched and says why", () => {
    const [hit] = find("reopening").groups.find((group) => group.kind === "callout")?.hits ?? [];
    const [start, end] = hit?.titleMarks[0] ?? [0, 0];
    expect(hit?.title.slice(start, end)).toBe("reopening");
    expect(hit?.why).toContain("symptom");
  });

  test("filters by lift, group and date", () => {
    expect(titles(find("doors light low", { filter: { liftId: kittiwake } }), "callout")).toEqual([
      "“stops a hand's breadth too low at 2”",
    ]);
    expect(
      titles(find("doors light low", { filter: { since: "2026-11-17T10:30:00.000Z" } }), "callout"),
    ).toEqual(["“no light in the car”"]);
    expect(find("doors", { filter: { group: "hydraulics" } }).advice).toContain("without");
  });

  test("a changed, renamed or deleted record is found as it is now", () => {
    const site = bench.ask("lift.find", { id: saltpan }).site;
    bench.ask("site.change", { id: site.id, version: site.version, fields: { name: "Curlew Wharf" } });
    expect(titles(find("curlew wharf reopening"), "callout")[0]).toContain("reopening");
    expect(titles(find("saltpan"), "lift")).toEqual([]);
  });

  test("hopeless and hostile queries get an answer", () => {
    expect(find("").advice).toContain("Type what");
    // Signs and operators of a query language are no words; what is left is a word like any other, and a calculator's
    // words may answer to it.
    const operators = find('!!! "( * ) OR NEAR/x').groups.map((group) => group.kind);
    expect(operators.filter((kind) => kind !== "calculator")).toEqual([]);
    expect(find('!!! "( * )').groups).toEqual([]);
    expect(find("x".repeat(20_000)).groups).toEqual([]);
    expect(find("лифт не едет").advice).not.toBeNull();
  });
});

test("a typing error is corrected, said, and can be undone", () => {
  bench.core.search.buildAll();
  const found = find("reopning");
  expect(found.corrections).toEqual([{ typed: "reopning", readAs: "reopening" }]);
  expect(find("reopning", { keepWords: ["reopning"] }).corrections).toEqual([]);
});

test("the index in memory equals one built anew after many writes", () => {
  bench.core.search.buildAll();
  const callout = bench.ask("callout.list", {}).callouts[0];
  bench.ask("callout.change", {
    id: callout?.id ?? "",
    version: 1,
    fields: { said: "will not level at the terrace" },
  });
  bench.ask("callout.join", { id: callout?.id ?? "", said: "it hangs above the floor" });
  const rows = bench.core.file.all<{ docid: number }>(
    "SELECT docid FROM searchText WHERE searchText MATCH 'terrace'",
  );
  expect(rows).toHaveLength(1);
  bench.core.file.exec("INSERT INTO searchText (searchText) VALUES ('integrity-check')");
  expect(titles(find("hangs above terrace"), "callout")[0]).toContain("terrace");
});
