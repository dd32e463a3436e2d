import { describe, expect, test } from "vitest";
import { type ReviewFilter, readFilter } from "../../../renderer/features/review/review-filter.ts";

const now = new Date("2026-11-17T12:00:00");
const filter: ReviewFilter = {
  time: "days",
  from: "3 Mar",
  until: "yesterday",
  siteText: "",
  siteId: null,
  group: "any",
};

describe("the filters", () => {
  test("are read as typed", () => {
    expect(readFilter(filter, now)).toEqual({
      kind: "address",
      address: { last: "year", from: "2026-03-03", until: "2026-11-16", site: null, group: null },
    });
    const quarter = {
      ...filter,
      time: "quarter",
      from: "nonsense",
      siteText: "Saltpan",
      siteId: "s",
    } as const;
    expect(readFilter({ ...quarter, group: "brake" }, now)).toEqual({
      kind: "address",
      address: { last: "quarter", from: null, until: null, site: "s", group: "brake" },
    });
  });

  test("say at the field what cannot be read", () => {
    expect(readFilter({ ...filter, from: "soon", until: "" }, now)).toMatchObject({
      kind: "problems",
      from: expect.stringMatching(/no day that can be read/),
      until: expect.stringMatching(/no day that can be read/),
    });
    expect(readFilter({ ...filter, from: "yesterday", until: "3 Mar" }, now)).toMatchObject({
      until: "The last day lies before the first one. Change one of them.",
    });
    expect(readFilter({ ...filter, siteText: "xyz" }, now)).toMatchObject({
      site: expect.stringMatching(/^No such site/),
    });
  });
});
