import { afterEach, beforeEach, describe, expect, test } from "vitest";
import type { InputOf } from "#shared-lib/contract/operations.ts";
import { addLift, openTestCore, type TestCore } from "./support/test-core.ts";

let bench: TestCore;
let liftId: string;
let noteId: string;
beforeEach(async () => {
  bench = await openTestCore();
  liftId = addLift(bench).liftId;
  noteId = bench.ask("faultNote.write", note).id;
});
afterEach(() => bench.close());

const note: InputOf<"faultNote.write"> = {
  title: "Doors reopen at one landing",
  group: "doors",
  symptoms: ["keeps reopening"],
  causes: [
    { key: "dirt", title: "Dirt in the sill", fix: "Clean it." },
    { key: "shoe", title: "Door shoe worn", fix: "Renew it." },
    { key: "edge", title: "Door edge out of line", fix: "Line it up." },
  ],
  checks: [
    {
      key: "sill",
      title: "Look into the sill",
      minutes: 4,
      outcomes: [
        { key: "dirty", words: "Dirty", means: { dirt: "likely" } },
        { key: "clean", words: "Clean", means: { dirt: "excludes" } },
      ],
    },
    {
      key: "shaft",
      title: "Shoe from the car top",
      minutes: 1,
      hazard: "shaft",
      caution: "Inspection control while it moves.",
      outcomes: [
        { key: "worn", words: "Worn", means: { shoe: "proves" } },
        { key: "sound", words: "Sound", means: { shoe: "excludes" } },
      ],
    },
  ],
};

function callout(said = "keeps reopening", on = liftId): string {
  bench.minutes(60);
  return bench.ask("callout.log", { liftId: on, liftWords: "", said, inside: "nobody" }).id;
}

/** A past callout that one of the causes ended, after a visit of 40 minutes. */
function ended(causeKey: string | null, on = liftId): string {
  const calloutId = callout("keeps reopening", on);
  const arrivedAt = bench.minutes(20);
  const leftAt = bench.minutes(40);
  const { fixId } = bench.ask("visit.record", {
    liftId: on,
    calloutId,
    kind: "callout",
    engineerId: bench.people.engineer,
    arrivedAt,
    leftAt,
    fix: { cause: "as told", fix: "done", group: "doors" },
  });
  bench.ask("fix.attach", { id: fixId ?? "", version: 1, noteId, causeKey });
  return calloutId;
}

const rank = (calloutId: string | null) =>
  bench.ask("cause.rank", { noteId, calloutId, ...(calloutId === null ? { liftId } : {}) });
const keysOf = ({ causes }: { causes: readonly { key: string }[] }) => causes.map(({ key }) => key);
const answer = (calloutId: string, checkKey: string, outcomeKey: string) =>
  bench.ask("cause.answerCheck", { noteId, calloutId, checkKey, outcomeKey }).id;

describe("ranking for a callout", () => {
  test("without history keeps the note's order and says so", () => {
    const ranking = rank(callout());
    expect(keysOf(ranking)).toEqual(["dirt", "shoe", "edge"]);
    expect(ranking.evidence).toMatchObject({ callouts: 0, thin: true });
    expect(ranking.evidence.sentence).toContain("No similar callout");
    expect(ranking.repairs.every(({ fromVisits, minutes }) => fromVisits === 0 && minutes === 60)).toBe(true);
  });

  test("follows the counts from five callouts on; the callout itself and deleted visits count for nothing", () => {
    const other = addLift(bench, "Lift 1", "Dunlin Court").liftId;
    const away = addLift(bench, "Lift 3", "Curlew Yard").liftId;
    const { lift } = bench.ask("lift.find", { id: away });
    bench.ask("lift.change", { id: away, version: lift.version, fields: { controllerFamily: "Whimbrel" } });
    for (let index = 0; index < 4; index++) ended("edge");
    ended("dirt", other);
    ended("shoe", away);
    ended(null);
    const gone = ended("dirt");
    const [visit] = bench.ask("visit.list", { calloutId: gone }).visits;
    bench.ask("record.delete", { entity: "visit", id: visit?.id ?? "", version: 1 });
    const ranking = rank(callout());
    expect(ranking.evidence).toMatchObject({ callouts: 6, alike: 5, onLift: 4, untold: 1, thin: false });
    expect(ranking.causes[0]).toMatchObject({ key: "edge", place: 3, callouts: 4, onLift: 4 });
    expect(keysOf(ranking)).toHaveLength(3);
    expect(ranking.repairs[0]).toEqual({
      causeKey: "edge",
      title: "Door edge out of line",
      minutes: 40,
      fromVisits: 4,
    });
    const mine = ended("dirt");
    expect(rank(mine).evidence.callouts).toBe(6);
    expect(rank(null).evidence).toMatchObject({ callouts: 7, onLift: 5 });
  });

  test("offers the harmless check first though the dangerous one is quicker, and carries the caution", () => {
    const ranking = rank(callout());
    expect(ranking.next).toMatchObject({ key: "sill", careful: false, tells: true });
    expect(ranking.next?.why).toContain("“Clean” points to “Door shoe worn”");
    expect(ranking.others).toMatchObject([
      { key: "shaft", careful: true, caution: "Inspection control while it moves.", hazard: "shaft" },
    ]);
  });
});

describe("answers", () => {
  test("move the ranking at once, and the next check follows", () => {
    const id = callout();
    answer(id, "sill", "clean");
    const after = rank(id);
    expect(keysOf(after)).toEqual(["shoe", "edge", "dirt"]);
    expect(after.causes[2]).toMatchObject({ probability: 0, ruledOutBy: ["Look into the sill: Clean"] });
    expect(after.next).toMatchObject({ key: "shaft", careful: true });
    answer(id, "shaft", "worn");
    const proved = rank(id);
    expect(proved.causes[0]).toMatchObject({
      key: "shoe",
      probability: 1,
      provedBy: ["Shoe from the car top: Worn"],
    });
    expect(proved.next).toBeNull();
    expect(proved.repairs.map(({ causeKey }) => causeKey)).toEqual(["shoe"]);
    expect(rank(callout()).answers).toEqual([]);
  });

  test("are kept with their words, who gave them and what stood first, also when the note changes later", () => {
    const id = callout();
    answer(id, "sill", "clean");
    const version = bench.ask("faultNote.find", { id: noteId }).note.version;
    bench.ask("faultNote.change", { id: noteId, version, fields: { checks: [] } });
    expect(bench.ask("cause.path", { calloutId: id }).steps).toMatchObject([
      {
        checkTitle: "Look into the sill",
        outcomeWords: "Clean",
        by: { name: "Ines Calder" },
        noteTitle: "Doors reopen at one landing",
        after: [
          { title: "Door shoe worn" },
          { title: "Door edge out of line" },
          { title: "Dirt in the sill" },
        ],
        takenBack: null,
        overtaken: false,
      },
    ]);
    expect(keysOf(rank(id))).toEqual(["dirt", "shoe", "edge"]);
  });

  test("taken back count no more and stay readable; once only", () => {
    const id = callout();
    const step = answer(id, "sill", "clean");
    bench.minutes(2);
    bench.ask("cause.takeBack", { stepId: step }, bench.people.lead);
    expect(keysOf(rank(id))).toEqual(["dirt", "shoe", "edge"]);
    expect(bench.ask("cause.path", { calloutId: id }).steps).toMatchObject([
      { id: step, takenBack: { by: { name: "Hedda Quill" } } },
    ]);
    expect(bench.refusal("cause.takeBack", { stepId: step })).toBe("state-refused");
  });

  test("given again take the place of the earlier answer", () => {
    const id = callout();
    answer(id, "sill", "clean");
    const second = answer(id, "sill", "dirty");
    expect(keysOf(rank(id))[0]).toBe("dirt");
    expect(bench.ask("cause.path", { calloutId: id }).steps.map(({ overtaken }) => overtaken)).toEqual([
      true,
      false,
    ]);
    bench.ask("cause.takeBack", { stepId: second });
    expect(keysOf(rank(id)).at(-1)).toBe("dirt");
  });

  test("that rule everything out are said in a sentence that names them", () => {
    const version = bench.ask("faultNote.find", { id: noteId }).note.version;
    const checks = (note.checks ?? []).map((check) => ({
      ...check,
      outcomes: [
        { key: "none", words: "Nothing", means: { dirt: "excludes", shoe: "excludes", edge: "excludes" } },
      ],
    }));
    bench.ask("faultNote.change", { id: noteId, version, fields: { checks: checks as typeof note.checks } });
    const id = callout();
    answer(id, "sill", "none");
    const ranking = rank(id);
    expect(ranking.contradiction).toContain("“Look into the sill”: Nothing");
    expect(ranking.next).toBeNull();
    expect(ranking.repairs).toEqual([]);
    expect(ranking.causes.map(({ probability }) => probability).every(Number.isFinite)).toBe(true);
    expect(bench.ask("cause.path", { calloutId: id }).steps[0]?.after).toEqual([]);
  });

  test("are refused where they belong nowhere or say nothing the note knows", () => {
    const id = callout();
    const unsettled = bench.ask("callout.log", {
      liftId: null,
      liftWords: "the one by the quay",
      said: "stuck doors",
      inside: "nobody",
    }).id;
    const given = { noteId, checkKey: "sill", outcomeKey: "clean" };
    expect(bench.refusal("cause.answerCheck", given)).toBe("input-invalid");
    expect(bench.refusal("cause.answerCheck", { ...given, calloutId: unsettled })).toBe("input-invalid");
    expect(bench.refusal("cause.answerCheck", { ...given, calloutId: id, checkKey: "x" })).toBe(
      "input-invalid",
    );
    expect(bench.refusal("cause.answerCheck", { ...given, calloutId: id, outcomeKey: "x" })).toBe(
      "input-invalid",
    );
    expect(bench.ask("cause.path", { calloutId: id }).steps).toEqual([]);
  });
});

describe("the path of a visit", () => {
  const visit = (calloutId: string, arrivedAt: string) =>
    bench.ask("visit.record", {
      liftId,
      calloutId,
      kind: "callout",
      engineerId: bench.people.engineer,
      arrivedAt,
    }).id;

  test("an answer belongs to the visit during which it was given, the first one takes what was asked before", () => {
    const id = callout();
    answer(id, "sill", "dirty");
    const first = bench.minutes(10);
    bench.minutes(5);
    answer(id, "shaft", "sound");
    const second = bench.minutes(300);
    bench.minutes(5);
    answer(id, "sill", "clean");
    const visits = [visit(id, first), visit(id, second)];
    const words = visits.map((visitId) =>
      bench.ask("cause.path", { visitId }).steps.map(({ outcomeWords }) => outcomeWords),
    );
    expect(words).toEqual([["Dirty", "Sound"], ["Clean"]]);
  });

  test("a visit without callout has its own", () => {
    const visitId = bench.ask("visit.record", {
      liftId,
      kind: "maintenance",
      engineerId: bench.people.engineer,
      arrivedAt: bench.minutes(10),
      found: "reopens",
    }).id;
    bench.ask("cause.answerCheck", { noteId, visitId, checkKey: "sill", outcomeKey: "dirty" });
    expect(bench.ask("cause.path", { visitId }).steps).toHaveLength(1);
    expect(bench.ask("cause.rank", { noteId, visitId }).causes[0]?.key).toBe("dirt");
  });

  test("a visit of another callout is refused", () => {
    const [one, other] = [callout(), callout()];
    const visitId = visit(one, bench.minutes(1));
    const given = { noteId, checkKey: "sill", outcomeKey: "dirty", calloutId: other, visitId };
    expect(bench.refusal("cause.answerCheck", given)).toBe("input-invalid");
  });
});

describe("similar past faults", () => {
  const similar = (text: string, more: object = {}) => bench.ask("cause.similar", { text, liftId, ...more });

  test("name the callout with its cause and fix, this lift first, and the note with its likeliest cause", () => {
    const other = addLift(bench, "Lift 1", "Dunlin Court").liftId;
    const away = ended("dirt", other);
    const here = ended("shoe");
    const { callouts, note: nearest } = similar("it keeps reopening at the lobby");
    expect(callouts.map(({ calloutId, circle }) => [calloutId, circle])).toEqual([
      [here, "lift"],
      [away, "alike"],
    ]);
    expect(callouts[0]).toMatchObject({
      liftTitle: "Kittiwake House, Lift 2",
      said: "keeps reopening",
      saidMarks: [
        [0, 5],
        [6, 15],
      ],
      cause: "as told",
      fix: "done",
      why: "this lift; 1 of 2 like it",
    });
    expect(nearest).toMatchObject({
      id: noteId,
      status: "draft",
      cause: "First to look at: Dirt in the sill.",
    });
  });

  test("leave out the callout in hand, and find callouts in other words through the note they are attached to", () => {
    const mine = ended("dirt");
    const otherWords = callout("bangs about at the ground floor");
    const fixed = bench.ask("visit.record", {
      liftId,
      calloutId: otherWords,
      kind: "callout",
      engineerId: bench.people.engineer,
      arrivedAt: bench.minutes(5),
      fix: { cause: "shoe gone", fix: "renewed", group: "doors" },
    });
    bench.ask("fix.attach", { id: fixed.fixId ?? "", version: 1, noteId, causeKey: "shoe" });
    const found = similar("keeps reopening", { calloutId: mine }).callouts;
    expect(found.map(({ calloutId }) => calloutId)).toEqual([otherWords]);
  });

  test("words that nothing knows find nothing", () => {
    expect(similar("qqxzv wwkjh")).toEqual({ callouts: [], note: null });
    expect(similar("?!")).toEqual({ callouts: [], note: null });
    expect(similar("x".repeat(8000))).toEqual({ callouts: [], note: null });
  });
});
