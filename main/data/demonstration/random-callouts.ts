import type { Cause } from "#shared-lib/contract/fault-note.ts";
import type { DriveKind, FaultGroup } from "#shared-lib/words.ts";
import type { PlannedCallout } from "./planned-callout.ts";
import type { SeededRandom } from "./seeded-random.ts";

export interface DemonstrationNote {
  readonly id: string;
  readonly starterKey: string;
  readonly faultGroup: FaultGroup;
  readonly symptoms: readonly string[];
  readonly causes: readonly Cause[];
  readonly drives: readonly DriveKind[];
}

export interface DemonstrationLift {
  readonly id: string;
  readonly title: string;
  readonly driveKind: DriveKind;
  readonly trouble: number;
  readonly callers: readonly string[];
  readonly telephone: string;
  readonly landingIds: readonly string[];
}

const day = 24 * 60 * 60_000;

/** How often each group is called out for: doors lead, as everywhere (common practice, no source). */
const groupShares: Readonly<Partial<Record<FaultGroup, number>>> = {
  doors: 26,
  "door operator": 12,
  "landing and car panels": 10,
  "position and zone sensing": 9,
  "safety chain": 8,
  "controller and power supply": 8,
  "drive and motor": 6,
  "car, lighting, ventilation": 6,
  "panel bus and cabling": 4,
  "environment and misuse": 4,
  "alarm and rescue": 3,
  brake: 3,
  hydraulics: 5,
  "suspension and traction": 2,
  "buffers, pit and shaft": 2,
  "governor and safety gear": 1,
  "not yet known": 2,
};

const insideGroups: ReadonlySet<FaultGroup> = new Set([
  "doors",
  "safety chain",
  "controller and power supply",
  "drive and motor",
  "not yet known",
]);

const openings = [
  "",
  "",
  "",
  "caller says: ",
  "again, ",
  "since this morning: ",
  "tenant reports ",
  "second time this week: ",
] as const;

/** Callouts arrive mostly between 07:00 and 20:00. */
function momentOfDay(random: SeededRandom): number {
  const hour = random.chance(0.85) ? random.integer(7, 19) : random.integer(0, 23);
  return (hour * 60 + random.integer(0, 59)) * 60_000;
}

export interface RandomCalloutFrame {
  readonly count: number;
  readonly from: number;
  readonly until: number;
  readonly lifts: readonly DemonstrationLift[];
  readonly notes: readonly DemonstrationNote[];
  readonly engineers: readonly string[];
}

/** The everyday callouts of two years: each from a starter note that fits the lift, ended by one of its causes. */
export function randomCallouts(random: SeededRandom, frame: RandomCalloutFrame): PlannedCallout[] {
  const days = Math.floor((frame.until - frame.from) / day);
  return Array.from({ length: frame.count }, () => {
    const lift = random.pickWeighted(frame.lifts, (candidate) => candidate.trouble);
    const receivedAt = frame.from + random.integer(0, days - 1) * day + momentOfDay(random);
    return randomCallout(random, lift, receivedAt, frame);
  });
}

function randomCallout(
  random: SeededRandom,
  lift: DemonstrationLift,
  receivedAt: number,
  frame: RandomCalloutFrame,
): PlannedCallout {
  const fitting = frame.notes.filter(
    (note) => note.drives.length === 0 || note.drives.includes(lift.driveKind),
  );
  const note = random.pickWeighted(fitting, (candidate) => {
    const ofGroup = fitting.filter((other) => other.faultGroup === candidate.faultGroup).length;
    return (groupShares[candidate.faultGroup] ?? 1) / ofGroup;
  });
  const inside = insideGroups.has(note.faultGroup) && random.chance(0.1) ? "people inside" : "nobody";
  const passedAfter = random.integer(1, 8);
  const arrivedAfter = passedAfter + random.integer(12, inside === "people inside" ? 40 : 150);
  const outcome = random.next();
  const fixed = outcome < 0.78;
  const cause = random.pickWeighted(
    note.causes,
    (candidate) => 1 / (1 + note.causes.indexOf(candidate)) ** 1.3,
  );
  const isAttached = random.chance(0.7);
  return {
    liftId: lift.id,
    receivedAt,
    said: random.pick(openings) + random.pick(note.symptoms),
    group: note.faultGroup,
    inside,
    caller: random.pick(lift.callers),
    callBack: lift.telephone,
    engineerId: random.pick(frame.engineers),
    landingId: random.chance(0.4) ? random.pick(lift.landingIds) : null,
    passedAfter,
    arrivedAfter,
    leftAfter: arrivedAfter + random.integer(25, 160),
    found: fixed
      ? firstSentence(cause.tell)
      : outcome < 0.93
        ? "Runs on arrival; ran it through all landings, nothing seen."
        : "",
    done: fixed ? cause.fix : "Ran the lift for twenty minutes, checked doors and levels.",
    fix: fixed
      ? {
          cause: cause.title,
          fix: firstSentence(cause.fix),
          noteKey: isAttached ? note.starterKey : null,
          causeKey: isAttached ? cause.key : null,
        }
      : null,
    parts: fixed && random.chance(0.25) ? [{ name: partFor(note.faultGroup), quantity: 1 }] : [],
    ending: endingOf(random, outcome, inside),
    chargeable: random.chance(0.15),
  };
}

function endingOf(random: SeededRandom, outcome: number, inside: string): PlannedCallout["ending"] {
  if (outcome < 0.78) return random.chance(0.05) ? "left out of service" : "repaired";
  if (outcome < 0.9 || inside === "people inside") return "nothing found";
  if (outcome < 0.95) return "repaired";
  return outcome < 0.985 ? "cancelled" : "wrong address";
}

function firstSentence(text: string): string {
  return /^.*?[.;](?=\s|$)/.exec(text)?.[0].replace(/;$/, ".") ?? text;
}

const parts: Readonly<Partial<Record<FaultGroup, string>>> = {
  doors: "Door shoe",
  "door operator": "Door belt",
  "landing and car panels": "Push button",
  "position and zone sensing": "Zone sensor",
  "safety chain": "Door contact",
  "controller and power supply": "Fuse",
  "car, lighting, ventilation": "Lamp",
  hydraulics: "Seal set",
};

function partFor(group: FaultGroup): string {
  return parts[group] ?? "Fixing set";
}
