export interface Repair {
  readonly causeKey: string;
  readonly probability: number;
  /** Minutes of trying this repair, more than 0. */
  readonly minutes: number;
}

/**
 * Repairs with one cause at work, each tried until one helps: the least time is expected with the highest probability
 * over time first (Heckerman, Breese and Rommelse 1995, "Decision-theoretic troubleshooting", section 2).
 */
export function repairOrder<One extends Repair>(repairs: readonly One[]): One[] {
  return [...repairs].sort((one, other) => other.probability / other.minutes - one.probability / one.minutes);
}

/** Expected minutes until one of the repairs helped, in the order given: each is tried when none before it helped. */
export function expectedRepairMinutes(repairs: readonly Repair[]): number {
  let left = repairs.reduce((sum, { probability }) => sum + probability, 0);
  let minutes = 0;
  for (const repair of repairs) {
    minutes += left * repair.minutes;
    left -= repair.probability;
  }
  return minutes;
}
