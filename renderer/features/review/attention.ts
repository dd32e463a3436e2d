import type { CalloutLine } from "#shared-lib/contract/callout.ts";
import type { OutputOf } from "#shared-lib/contract/operations.ts";
import { formatDay, formatSince } from "#shared-lib/format.ts";
import { bridgeAcross } from "../bridges/bridge-parts.ts";
import { peopleAreInside, peopleWords } from "../callout/event-parts.ts";
import { chainKey, chainWords, fixTriedAgain, fixWords } from "./review-words.ts";

type Attention = OutputOf<"review.attention">;

/** One sentence of what needs a person, with the lift it is about. */
export interface AttentionItem {
  readonly key: string;
  /** The place it leads to. */
  readonly to:
    | { readonly kind: "lift"; readonly id: string }
    | { readonly kind: "callout"; readonly id: string };
  /** Leads there. */
  readonly lead: string;
  readonly rest: string;
  /** Callouts of a chain; none for a bridge or a danger. */
  readonly calloutIds: readonly string[];
  readonly listTitle: string;
}

/**
 * People inside come first, then what can hurt somebody: dangers, then open bridges; then the chains of repeats that run.
 * @param open open callouts
 */
export function attentionItems(
  { dangers, bridges, chains }: Attention,
  open: readonly CalloutLine[],
  now: Date,
): AttentionItem[] {
  return [
    ...open.filter(peopleAreInside).map((line) => insideItem(line, now)),
    ...dangers.map((danger) => dangerItem(danger, now)),
    ...bridges.map((bridge) => bridgeItem(bridge, now)),
    ...chains.map(chainItem),
  ];
}

function insideItem(line: CalloutLine, now: Date): AttentionItem {
  const { id, number, liftTitle, insideCount, insideSince, receivedAt, engineer } = line;
  const since = formatSince(insideSince ?? receivedAt, now);
  return {
    key: id,
    to: { kind: "callout", id },
    lead: `${liftTitle}: ${peopleWords(insideCount).toLowerCase()} inside.`,
    rest: `Since ${since}, ${number}, ${engineer === null ? "with nobody yet" : `with ${engineer.name}`}. Not recorded as released.`,
    calloutIds: [],
    listTitle: "",
  };
}

function dangerItem(danger: Attention["dangers"][number], now: Date): AttentionItem {
  const { id, liftId, liftTitle, foundAt, foundBy } = danger;
  return {
    key: id,
    to: { kind: "lift", id: liftId },
    lead: `${liftTitle}: car door and landing door found bridged together.`,
    rest: `Found ${formatSince(foundAt, now)}, ${foundBy.name}. Blocks every further step until it is cleared.`,
    calloutIds: [],
    listTitle: "",
  };
}

function bridgeItem(bridge: Attention["bridges"][number], now: Date): AttentionItem {
  const { id, liftId, liftTitle, setAt, setBy, removedAt } = bridge;
  const after =
    removedAt === null
      ? "The lift cannot be recorded as back in service."
      : `Removal recorded ${formatSince(removedAt, now)}; the second check is missing.`;
  return {
    key: id,
    to: { kind: "lift", id: liftId },
    lead: `${liftTitle}: bridge open.`,
    rest: `Across ${bridgeAcross(bridge)}, set ${formatSince(setAt, now)}, ${setBy.name}. ${after}`,
    calloutIds: [],
    listTitle: "",
  };
}

function chainItem(chain: Attention["chains"][number]): AttentionItem {
  const tried = fixTriedAgain(chain);
  const newest = chain.callouts.at(-1);
  const last = newest === undefined ? "" : `The last came on ${formatDay(newest.receivedAt)}.`;
  return {
    key: chainKey(chain),
    to: { kind: "lift", id: chain.liftId },
    lead: `${chain.liftTitle}: ${chainWords(chain)}.`,
    rest: tried === null ? last : fixWords(tried),
    calloutIds: chain.callouts.map(({ id }) => id),
    listTitle: chainTitle(chain),
  };
}

export function chainTitle({ liftTitle, group }: Pick<Attention["chains"][number], "liftTitle" | "group">) {
  return `${liftTitle}: chain of repeats, ${group}`;
}
