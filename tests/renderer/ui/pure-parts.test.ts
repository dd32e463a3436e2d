import fc from "fast-check";
import { expect, test } from "vitest";
import { ariaKeyShortcut } from "../../../renderer/ui/aria-key-shortcut.ts";
import { cloudPath } from "../../../renderer/ui/cloud-path.ts";
import { cutText } from "../../../renderer/ui/marked-text.tsx";
import { movedIndex } from "../../../renderer/ui/moved-index.ts";

test("marked text: the pieces joined are the text, and a unit is marked exactly when a range holds it", () => {
  const range = fc.record({ start: fc.integer({ min: -5, max: 40 }), end: fc.integer({ min: -5, max: 40 }) });
  fc.assert(
    fc.property(fc.string({ maxLength: 30 }), fc.array(range, { maxLength: 6 }), (text, ranges) => {
      const pieces = cutText(text, ranges);
      expect(pieces.map((piece) => piece.words).join("")).toBe(text);
      const marked = pieces.flatMap((piece) => [...Array(piece.words.length)].map(() => piece.marked));
      const expected = [...Array(text.length)].map((_, i) =>
        ranges.some(({ start, end }) => start <= i && i < end),
      );
      expect(marked).toEqual(expected);
    }),
  );
});

test("a list key never leaves the list", () => {
  const keys = fc.constantFrom("ArrowUp", "ArrowDown", "PageUp", "PageDown", "Home", "End");
  fc.assert(
    fc.property(keys, fc.integer({ min: 1, max: 50 }), fc.integer({ min: -1, max: 49 }), (key, count, at) => {
      const next = movedIndex(key, Math.min(at, count - 1), count, 7);
      expect(next).toBeGreaterThanOrEqual(0);
      expect(next).toBeLessThan(count);
    }),
  );
  expect(movedIndex("ArrowDown", -1, 3, 7)).toBe(0);
  expect(movedIndex("ArrowUp", -1, 3, 7)).toBe(2);
  expect(movedIndex("ArrowDown", 0, 0, 7)).toBeUndefined();
  expect(movedIndex("a", 0, 3, 7)).toBeUndefined();
});

test("a cloud closes and stays within one arc of its box", () => {
  const path = cloudPath({ x: 10, y: 20, width: 44, height: 22 });
  const ends = [...path.matchAll(/A[\d.]+ [\d.]+ 0 0 1 ([\d.-]+) ([\d.-]+)/g)].map((m) => [
    Number(m[1]),
    Number(m[2]),
  ]);
  expect(path.startsWith("M10 20")).toBe(true);
  expect(ends.at(-1)).toEqual([10, 20]);
  expect(ends).toHaveLength(12);
  for (const [x = 0, y = 0] of ends) {
    expect(x === 10 || x === 54 || y === 20 || y === 42).toBe(true);
  }
});

test("a key as assistive technology wants it", () => {
  expect(ariaKeyShortcut("Ctrl Enter")).toBe("Control+Enter");
  expect(ariaKeyShortcut("Alt G")).toBe("Alt+G");
  expect(ariaKeyShortcut("N")).toBe("N");
});
