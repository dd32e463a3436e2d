import { expect, test } from "vitest";
import { keyMatches } from "../../renderer/key-matching.ts";

const press = (
  key: string,
  held: { ctrlKey?: boolean; metaKey?: boolean; altKey?: boolean; code?: string } = {},
) => ({
  key,
  code: "",
  ctrlKey: false,
  metaKey: false,
  altKey: false,
  ...held,
});

test.each([
  ["N", press("n"), undefined, true],
  ["N", press("N"), undefined, true],
  ["N", press("n", { ctrlKey: true }), undefined, false],
  ["N", press("n", { altKey: true }), undefined, false],
  ["F1", press("F1"), undefined, true],
  ["Ctrl S", press("s", { ctrlKey: true }), undefined, true],
  ["Ctrl S", press("s", { metaKey: true }), undefined, true],
  ["Ctrl S", press("s"), undefined, false],
  ["Ctrl Enter", press("Enter", { ctrlKey: true }), undefined, true],
  ["Alt G", press("©", { altKey: true, code: "KeyG" }), undefined, true],
  ["G D", press("d"), "g", true],
  ["G D", press("d"), undefined, false],
  ["G D", press("d"), "x", false],
  ["G D", press("d", { ctrlKey: true }), "g", false],
] as const)("%s, %o after %s: %s", (keys, pressed, before, matches) => {
  expect(keyMatches(keys, pressed, before)).toBe(matches);
});
