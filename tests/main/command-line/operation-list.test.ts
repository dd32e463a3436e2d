import { expect, test } from "vitest";
import { operations } from "#shared-lib/contract/operations.ts";
import { operationList } from "../../../main/command-line/operation-list.ts";

test("every operation is listed with a JSON Schema for input and output", () => {
  const list = operationList();
  expect(list.map((entry) => entry.operation)).toEqual(Object.keys(operations));
  for (const entry of list) {
    expect(entry.summary).not.toBe("");
    expect(entry.input, entry.operation).toMatchObject({
      $schema: expect.stringContaining("json-schema.org"),
    });
    expect(entry.output, entry.operation).toMatchObject({
      $schema: expect.stringContaining("json-schema.org"),
    });
  }
});

test("the list is plain JSON", () => {
  const list = operationList();
  expect(JSON.parse(JSON.stringify(list))).toEqual(list);
});
