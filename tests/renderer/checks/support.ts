import type { Expected } from "#shared-lib/contract/check.ts";
import type { CheckStep } from "../../../renderer/features/checks/check-types.ts";

const order: Expected = { kind: "order", direction: "up", order: ["upper on", "lower on"] };

/** A step as check.find answers it, with what the test is about. */
export function step(part: Partial<CheckStep> = {}): CheckStep {
  return {
    key: "zone-up-1",
    title: "Order of the zone sensors at 1, moving up",
    how: "Let the lift run up past landing 1.",
    caution: "Nobody rides.",
    landingId: null,
    landingMarking: "1",
    part: "zone-magnet",
    expected: order,
    source: "common practice, no source",
    searchWords: "zone sensor order reversed",
    found: null,
    verdict: "unchecked",
    sentence: "",
    note: "",
    at: null,
    by: null,
    previous: null,
    ...part,
  };
}

export const previous = (part: Partial<NonNullable<CheckStep["previous"]>> = {}) => ({
  checkId: "01900000-0000-7000-8000-000000000001",
  found: { kind: "order" as const, order: ["upper on", "lower on"] },
  verdict: "passed" as const,
  sentence: "As expected: upper on, lower on.",
  at: "2026-11-01T10:00:00.000Z",
  ...part,
});
