import { join, resolve, sep } from "node:path";
import fc from "fast-check";
import { expect, test } from "vitest";
import { locateBundleFile } from "../../../main/local-web/bundle-file.ts";

const folder = resolve("/some/where/screens");

test("the front page and a file below are found", () => {
  expect(locateBundleFile(folder, "/")).toBe(join(folder, "index.html"));
  expect(locateBundleFile(folder, "/assets/a%20b.js")).toBe(join(folder, "assets", "a b.js"));
});

test("no path leads outside the folder, and none to a neighbour whose name begins alike", () => {
  const piece = fc.oneof(
    fc.constantFrom(
      "..",
      ".",
      "%2e%2e",
      "%2E.",
      "..%2f",
      "%2f",
      "\\",
      "%5c",
      "/",
      "//",
      "%00",
      "C:",
      "screens-old",
      "%",
    ),
    fc.string({ maxLength: 5 }),
  );
  fc.assert(
    fc.property(fc.array(piece, { maxLength: 12 }), fc.constantFrom("/", ""), (pieces, separator) => {
      const found = locateBundleFile(folder, `/${pieces.join(separator)}`);
      if (found === undefined) return;
      expect(found.startsWith(folder + sep)).toBe(true);
      expect(resolve(found)).toBe(found);
    }),
    { numRuns: 2_000 },
  );
  expect(locateBundleFile(folder, "/../screens-old/x.js")).toBeUndefined();
});
