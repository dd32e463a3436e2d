import { expect, test } from "vitest";
import { clause, derived, site, writeSource } from "#shared-lib/calculators/source.ts";

test("a limit shows its clause with edition, and how sure it is", () => {
  expect(writeSource(clause("published", "EN 81-20", "2020", "5.2.5.3.2", "wall"))).toBe(
    "EN 81-20:2020, 5.2.5.3.2",
  );
  expect(writeSource(clause("second-hand", "EN 81-20", "2020", "5.3.8.1", "zone"))).toBe(
    "EN 81-20:2020, 5.3.8.1 (from notes on the clause, compare the current text)",
  );
  expect(writeSource(clause("from memory", "EN 81-20", "2020", "5.12.2", "final"))).toBe(
    "EN 81-20:2020, 5.12.2 (from memory, check against the current text)",
  );
  expect(writeSource(derived("geometry"))).toBe("geometry (derived)");
  expect(writeSource(site("from the site's drawing"))).toBe("from the site's drawing");
});
