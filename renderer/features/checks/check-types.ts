import type { OutputOf } from "#shared-lib/contract/operations.ts";

/** One step of a check that is carried out, with what was found and what the previous time showed. */
export type CheckStep = OutputOf<"check.find">["steps"][number];
export type PlanLine = OutputOf<"check.plans">["plans"][number];
