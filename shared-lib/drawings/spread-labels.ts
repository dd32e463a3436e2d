/** Something that wants to stand at `anchor` pixels and needs `extent` pixels of the line for itself. */
export interface SpreadItem {
  readonly anchor: number;
  readonly extent: number;
  /** How strongly it holds its place against its neighbours; a tick's own label holds, a leader's label gives way. */
  readonly weight?: number;
}

interface Block {
  weight: number;
  /** Weighted sum of the wanted places of the block's first item. */
  sum: number;
  members: number[];
  offsets: number[];
  extent: number;
}

function blockStart(block: Block): number {
  return block.sum / block.weight;
}

function mergeInto(upper: Block, lower: Block): void {
  for (const [index, member] of lower.members.entries()) {
    upper.members.push(member);
    upper.offsets.push(upper.extent + (lower.offsets[index] ?? 0));
  }
  upper.sum += lower.sum - lower.weight * upper.extent;
  upper.weight += lower.weight;
  upper.extent += lower.extent;
}

/**
 * Places items on a line so that none overlaps another and the weighted squared distance to the anchors is
 * least (pool adjacent violators). Order follows the anchors. Returns centres, in the order given.
 * Items are kept within `from` and `to` where their total extent allows; else they run over at the end.
 */
export function spreadLabels(items: readonly SpreadItem[], from: number, to: number): number[] {
  const order = items
    .map((_, index) => index)
    .sort((a, b) => (items[a]?.anchor ?? 0) - (items[b]?.anchor ?? 0) || a - b);
  const blocks: Block[] = [];
  for (const index of order) {
    const item = items[index];
    if (!item) continue;
    const weight = item.weight ?? 1;
    const start = item.anchor - item.extent / 2;
    blocks.push({ weight, sum: weight * start, members: [index], offsets: [0], extent: item.extent });
    for (;;) {
      const last = blocks.at(-1);
      const before = blocks.at(-2);
      if (!last || !before || blockStart(before) + before.extent <= blockStart(last)) break;
      mergeInto(before, last);
      blocks.pop();
    }
  }
  return placeWithin(blocks, items, from, to);
}

function placeWithin(
  blocks: readonly Block[],
  items: readonly SpreadItem[],
  from: number,
  to: number,
): number[] {
  const starts = blocks.map(blockStart);
  let ceiling = to;
  for (let i = blocks.length - 1; i >= 0; i--) {
    starts[i] = Math.min(starts[i] ?? 0, ceiling - (blocks[i]?.extent ?? 0));
    ceiling = starts[i] ?? 0;
  }
  let floor = from;
  for (const [i, block] of blocks.entries()) {
    starts[i] = Math.max(starts[i] ?? 0, floor);
    floor = (starts[i] ?? 0) + block.extent;
  }
  const centres = items.map(() => 0);
  for (const [i, block] of blocks.entries()) {
    for (const [k, member] of block.members.entries()) {
      centres[member] = (starts[i] ?? 0) + (block.offsets[k] ?? 0) + (items[member]?.extent ?? 0) / 2;
    }
  }
  return centres;
}
