import type { OutputOf } from "#shared-lib/contract/operations.ts";
import { formatDay, formatSince } from "#shared-lib/format.ts";
import { bridgeAcross } from "../bridges/bridge-parts.ts";
import { chainKey, chainWords, fixTriedAgain, fixWords } from "./review-words.ts";

type Attention = OutputOf<"review.attention">;

/** One sentence of what needs a person, with the lift it is about. */
export interface AttentionItem {
  readonly key: string;
  readonly liftId: string;
  /** Leads to the lift. */
  readonly lead: string;
  readonly rest: string;
  /** Callouts of a chain; none for a bridge or a danger. */
  readonly calloutIds: readonly string[];
  readonly listTitle: string;
}

/** What can hurt somebody comes first: dangers, then open bridges, then the chains of repeats that run. */
export function attentionItems({ dangers, bridges, chains }: Attention, now: Date): AttentionItem[] {
  return [
    ...dangers.map((danger) => dangerItem(danger, now)),
    ...bridges.map((bridge) => bridgeItem(bridge, now)),
    ...chains.map(chainItem),
  ];
}

function dangerItem(danger: Attention["dangers"][number], now: Date): AttentionItem {
  const { id, liftId, liftTitle, foundAt, foundBy } = danger;
  return {
    key: id,
    liftId,
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
    liftId,
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
    liftId: chain.liftId,
    lead: `${chain.liftTitle}: ${chainWords(chain)}.`,
    rest: tried === null ? last : fixWords(tried),
    calloutIds: chain.callouts.map(({ id }) => id),
    listTitle: chainTitle(chain),
  };
}

export function chainTitle({ liftTitle, group }: Pick<Attention["chains"][number], "liftTitle" | "group">) {
  return `${liftTitle}: chain of repeats, ${group}`;
}
