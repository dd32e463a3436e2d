import { afterEach, beforeEach, expect, test } from "vitest";
import { addLift, openTestCore, type TestCore } from "./support/test-core.ts";

let data: TestCore;
beforeEach(async () => {
  data = await openTestCore();
});
afterEach(() => data.close());

test("landings that somebody else changed or added meanwhile are not overwritten unseen", () => {
  const { liftId } = addLift(data);
  const { lift, landings } = data.ask("lift.find", { id: liftId });
  const seen = landings.map(({ id, version }) => ({ id, version }));
  const rows = landings.map(({ id, marking, name, level, entrances }) => ({
    id,
    marking,
    name,
    level,
    entrances,
  }));
  const common = { liftId, version: lift.version };
  data.ask("lift.setLandings", { ...common, seen, landings: [...rows, { marking: "9", level: 40 }] });
  expect(data.refusal("lift.setLandings", { ...common, seen, landings: rows })).toBe("version-conflict");
  const present = data.ask("lift.find", { id: liftId }).landings;
  expect(present).toHaveLength(landings.length + 1);

  const asNow = present.map(({ id, version }) => ({ id, version }));
  data.ask("lift.setLandings", { ...common, seen: asNow, landings: rows });
  expect(data.ask("lift.find", { id: liftId }).landings).toHaveLength(landings.length);
});
