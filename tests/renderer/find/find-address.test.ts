import fc from "fast-check";
import { expect, test } from "vitest";
import { driveKinds, faultGroups, noteStatuses } from "#shared-lib/words.ts";
import {
  type FindAddress,
  filterOf,
  isFiltered,
  readFindAddress,
  withoutFilters,
  writeFindAddress,
} from "../../../renderer/features/find/find-address.ts";

const day = fc
  .date({ min: new Date("1990-01-02"), max: new Date("2099-12-30"), noInvalidDate: true })
  .map((date) => date.toISOString().slice(0, 10));

const address: fc.Arbitrary<FindAddress> = fc
  .record({
    q: fc.string(),
    lift: fc.option(fc.uuid()),
    only: fc.boolean(),
    site: fc.option(fc.uuid()),
    controller: fc.option(fc.string({ minLength: 1, maxLength: 200 })),
    drive: fc.option(fc.constantFrom(...driveKinds)),
    group: fc.option(fc.constantFrom(...faultGroups)),
    since: fc.option(day),
    status: fc.option(fc.constantFrom(...noteStatuses)),
    keep: fc.array(fc.string({ minLength: 1, maxLength: 100 }), { maxLength: 50 }),
  })
  .map((one) => ({ ...one, only: one.only && one.lift !== null }));

test("what is written into the address is read from it", () => {
  fc.assert(
    fc.property(address, (one) => {
      expect(readFindAddress(writeFindAddress(one))).toEqual(one);
    }),
  );
});

test("whatever stands in an address, it is read without an error and fits the contract's limits", () => {
  fc.assert(
    fc.property(
      fc.dictionary(
        fc.constantFrom("q", "lift", "only", "site", "controller", "drive", "group", "since", "keep"),
        fc.jsonValue(),
      ),
      (search) => {
        const read = readFindAddress(search);
        expect(read.keep.every((word) => word.length <= 100)).toBe(true);
        expect(readFindAddress(writeFindAddress(read))).toEqual(read);
        expect(() => filterOf(read)).not.toThrow();
      },
    ),
  );
});

test("a day that is none is left out", () => {
  expect(readFindAddress({ since: "2026-13-41" }).since).toBeNull();
  expect(readFindAddress({ since: "2026-05-24" }).since).toBe("2026-05-24");
});

test("digits typed alone are words, not a number", () => {
  expect(readFindAddress({ q: 4711 }).q).toBe("4711");
});

test("the lift alone is no filter; with `only` it is one", () => {
  const lift = "01a21007-8025-7000-9526-ea44b48d39f2";
  expect(isFiltered(readFindAddress({ lift }))).toBe(false);
  expect(filterOf(readFindAddress({ lift, only: true }))).toEqual({ liftId: lift });
  const bare = withoutFilters(readFindAddress({ q: "stops", lift, only: true, group: "doors" }));
  expect(isFiltered(bare)).toBe(false);
  expect([bare.q, bare.lift]).toEqual(["stops", lift]);
});
