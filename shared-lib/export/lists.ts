import { calloutList, timelineList } from "./callout-lists.ts";
import type { ExportList } from "./export-list.ts";
import { liftList, partList, signalList, siteList, visitList } from "./lift-lists.ts";
import {
  faultGroupCountList,
  liftCountList,
  noteUseList,
  repeatList,
  withoutCauseList,
} from "./review-lists.ts";
import { bridgeList, checkList, checkStepList, dangerList, noteList, searchList } from "./work-lists.ts";

/** Every list that the program shows and that can be saved as a table, by the name under which `ask --list` knows it. */
export const exportLists = {
  callouts: calloutList,
  timeline: timelineList,
  "search results": searchList,
  lifts: liftList,
  sites: siteList,
  signals: signalList,
  visits: visitList,
  parts: partList,
  "fault notes": noteList,
  repeats: repeatList,
  "counts per lift": liftCountList,
  "counts per fault group": faultGroupCountList,
  "closed without a cause": withoutCauseList,
  "fault notes used": noteUseList,
  checks: checkList,
  "check steps": checkStepList,
  bridges: bridgeList,
  dangers: dangerList,
} as const;

export type ListName = keyof typeof exportLists;
/** What a list is asked with: the input of the operation that the screen asks. */
export type ListInput<Name extends ListName> =
  (typeof exportLists)[Name] extends ExportList<infer Input> ? Input : never;
