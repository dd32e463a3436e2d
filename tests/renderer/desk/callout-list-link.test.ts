import fc from "fast-check";
import { expect, test } from "vitest";
import { calloutListLink, readCalloutListSearch } from "../../../renderer/features/desk/callout-list-link.ts";

test("what the link writes is what the list reads", () => {
  fc.assert(
    fc.property(fc.array(fc.uuid(), { maxLength: 40 }), fc.string({ minLength: 1 }), (ids, title) => {
      const { search } = calloutListLink(ids, title);
      expect(readCalloutListSearch({ ...search })).toEqual({ ids, list: "all", title });
    }),
  );
});

test("an address without a list is Desk itself", () => {
  expect(readCalloutListSearch({})).toBeNull();
  expect(readCalloutListSearch({ list: "some" })).toBeNull();
  expect(readCalloutListSearch({ list: 3, title: "x" })).toBeNull();
});

test("a list has a title of its own where the address gives none", () => {
  expect(readCalloutListSearch({ list: "closed" })).toEqual({
    ids: null,
    list: "closed",
    title: "Closed callouts",
  });
});

test("what is no id in the address is left out, and never asked for", () => {
  const id = "0199aaaa-0000-7000-8000-000000000001";
  expect(readCalloutListSearch({ ids: `${id}.nonsense.1` })?.ids).toEqual([id]);
  expect(readCalloutListSearch({ ids: "nonsense" })?.ids).toEqual([]);
});
