import { describe, expect, test } from "vitest";
import { liftFieldsSchema } from "#shared-lib/contract/lift.ts";
import { siteFieldsSchema } from "#shared-lib/contract/site.ts";
import { liftFields, siteFields } from "../../../renderer/features/lifts/lift-fields.ts";
import {
  type RecordField,
  readField,
  readRecord,
  shownValue,
  textOf,
  textsOf,
} from "../../../renderer/features/lifts/record-fields.ts";

const now = new Date(2026, 10, 24, 12, 0);
const fieldOf = (key: string): RecordField => {
  const field = liftFields.find((one) => one.key === key);
  if (field === undefined) throw new Error(`no field ${key}`);
  return field;
};

describe("the sheet of a lift", () => {
  test("has every field of the contract but the site, and no other", () => {
    const ofContract = Object.keys(liftFieldsSchema.shape).filter((key) => key !== "siteId");
    expect(liftFields.map((field) => field.key).sort()).toEqual(ofContract.sort());
    expect(siteFields.map((field) => field.key).sort()).toEqual(Object.keys(siteFieldsSchema.shape).sort());
  });

  test.each(
    liftFields.filter((field) => field.kind === "number").map((field) => [field.key, field] as const),
  )("%s has the range of the contract", (key, field) => {
    const schema = liftFieldsSchema.shape[key as keyof typeof liftFieldsSchema.shape];
    const { least = Number.NaN, most = Number.NaN } = field;
    const allows = (value: number): boolean => schema.safeParse(value).success;
    const step = field.whole === true ? 1 : 1e-6;
    expect([allows(least), allows(most)]).toEqual([true, true]);
    expect([allows(least - step), allows(most + step)]).toEqual([false, false]);
    expect(readField(field, textOf(field, least), now)).toEqual({ value: least });
    expect(readField(field, textOf(field, most), now)).toEqual({ value: most });
    expect(readField(field, textOf(field, most * 2), now)).toHaveProperty("problem");
  });

  test.each(
    liftFields.filter((field) => field.kind === "choice").map((field) => [field.key, field] as const),
  )("every word of %s is allowed by the contract", (key, field) => {
    const schema = liftFieldsSchema.shape[key as keyof typeof liftFieldsSchema.shape];
    for (const { stored } of field.options ?? []) {
      expect(schema.safeParse(stored).success).toBe(true);
      expect(readField(field, textOf(field, stored), now)).toEqual({ value: stored });
    }
  });
});

describe("a field", () => {
  test("is shown in millimetres without floating-point dust, and read back as metres", () => {
    const magnet = fieldOf("magnetLength");
    expect(textOf(magnet, 0.29)).toBe("290");
    expect(shownValue(magnet, 0.3)).toBe("300\u00a0mm");
    expect(readField(magnet, "290", now)).toEqual({ value: 0.29 });
  });

  test("says its range in its own unit", () => {
    expect(readField(fieldOf("magnetLength"), "0.3", now)).toEqual({
      problem: "Zone magnet length lies between 20\u00a0mm and 2000\u00a0mm.",
    });
  });

  test("reads a day as people write it, and asks back what is none", () => {
    const field = fieldOf("installedOn");
    expect(readField(field, "12 Mar 2025", now)).toEqual({ value: "2025-03-12" });
    expect(readField(field, textOf(field, "2021-05-12"), now)).toEqual({ value: "2021-05-12" });
    expect(readField(field, "last spring", now)).toHaveProperty("problem");
  });

  test("that is emptied is stored as nothing, a needed one is not", () => {
    expect(readField(fieldOf("ratedLoad"), "", now)).toEqual({ value: null });
    expect(readField(fieldOf("plateNumber"), " ", now)).toEqual({ value: "" });
    expect(readField(fieldOf("name"), " ", now)).toHaveProperty("problem");
  });
});

describe("a form", () => {
  test("sends only what was changed", () => {
    const base = textsOf(liftFields, { name: "Lift 2", magnetLength: 0.3, driveKind: "hydraulic" });
    const reading = readRecord(liftFields, { ...base, magnetLength: "250", notes: "Keys" }, base, now);
    expect(reading).toEqual({ changed: { magnetLength: 0.25, notes: "Keys" }, problems: {}, clean: true });
  });

  test("with an unreadable number is not clean and keeps the others", () => {
    const base = textsOf(liftFields, { name: "Lift 2" });
    const reading = readRecord(liftFields, { ...base, ratedLoad: "heavy", pitDepth: "1.4" }, base, now);
    expect(reading.clean).toBe(false);
    expect(Object.keys(reading.problems)).toEqual(["ratedLoad"]);
    expect(reading.changed).toEqual({ pitDepth: 1.4 });
  });
});
