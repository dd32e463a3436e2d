import type { FaultNoteFields } from "../contract/fault-note.ts";
import type { WeighedCheck } from "./next-check.ts";
import { type AnsweredCheck, type CauseRanking, leastCallouts } from "./rank-causes.ts";

type Causes = FaultNoteFields["causes"];

const counted = (count: number, one: string, many = `${one}s`): string =>
  `${count} ${count === 1 ? one : many}`;

/** What the order rests on, and when that is too little. */
export function evidenceSentence(ranking: CauseRanking, untold: number): string {
  const { callouts, alike, onLift, thin } = ranking;
  const left = untold > 0 ? ` Of ${counted(untold, "more", "more")} no cause of the note was told.` : "";
  if (callouts === 0)
    return `No similar callout has a recorded cause yet: the order is the note’s own.${left}`;
  if (thin) {
    return `${counted(callouts, "similar callout")} with a recorded cause: too thin to rank, ${leastCallouts} are needed. The order is the note’s own.${left}`;
  }
  const near = [
    onLift > 0 ? `${onLift} on this lift` : "",
    alike > onLift ? `${alike - onLift} on others of its family and drive` : "",
  ].filter((words) => words !== "");
  const which = near.length > 0 ? `, ${near.join(", ")}` : "";
  return `Ranked by ${counted(callouts, "similar callout")} with a recorded cause${which}.${left}`;
}

const titleOf = (causes: Causes, key: string): string =>
  causes.find((cause) => cause.key === key)?.title ?? "a cause the note no longer has";

function likeliest(causes: Causes, probabilities: ReadonlyMap<string, number>): string {
  const [best] = [...probabilities].sort(([, one], [, other]) => other - one);
  return best ? titleOf(causes, best[0]) : "";
}

/** Why this check: what each of its outcomes would make the likeliest cause. */
export function whyCheck({ outcomes }: WeighedCheck, causes: Causes): string {
  const points = new Map<string, string[]>();
  for (const { outcome, after } of outcomes) {
    const verb = Math.max(...after.values()) > 0.999 ? "leaves only" : "points to";
    const to = `${verb} “${likeliest(causes, after)}”`;
    points.set(to, [...(points.get(to) ?? []), `“${outcome.words}”`]);
  }
  const targets = new Set(outcomes.map(({ after }) => likeliest(causes, after)));
  if (targets.size === 0) return "";
  if (targets.size === 1) return `Shows whether it is “${[...targets][0]}”, as it most looks now.`;
  return `${[...points].map(([to, words]) => `${words.join(" or ")} ${to}`).join("; ")}.`;
}

/** All causes ruled out: names the answers that do it. */
export function contradictionSentence(answers: readonly AnsweredCheck[]): string {
  const said = answers.map(({ check, outcome }) => `“${check.title}”: ${outcome.words}`).join("; ");
  return `The answers rule out every cause of this note (${said}). Look again at what is least sure and take that answer back; if all are right, it is a cause the note does not have, or more than one.`;
}
