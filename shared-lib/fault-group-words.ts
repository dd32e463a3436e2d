import type { FaultGroup } from "./words.ts";

/**
 * Words that point to a fault group when somebody describes a fault. The longer a phrase, the more it says; a phrase
 * counts once. Written from how callers and engineers speak; the group is only proposed and is settled at closing.
 */
const wordsOfGroup: Readonly<Record<Exclude<FaultGroup, "not yet known">, readonly string[]>> = {
  doors: [
    "door",
    "doors",
    "reopen",
    "reopens",
    "reopening",
    "keep opening",
    "won't close",
    "won't shut",
    "does not close",
    "will not close",
    "not closing",
    "sill groove",
    "door edge",
    "light curtain",
    "landing door",
    "opens again",
    "door lock",
  ],
  "door operator": [
    "door operator",
    "door drive",
    "door motor",
    "door belt",
    "slams",
    "door slow",
    "doors slow",
    "door judder",
    "doors half open",
    "door gear",
  ],
  "safety chain": [
    "safety chain",
    "safety circuit",
    "chain open",
    "door contact",
    "lock contact",
    "stop switch",
    "chain drops",
  ],
  "position and zone sensing": [
    "stops short",
    "stops low",
    "stops high",
    "too low",
    "too high",
    "not level",
    "level",
    "step",
    "trip hazard",
    "trips over",
    "ledge",
    "climb up",
    "climb down",
    "lower than",
    "higher than",
    "overshoots",
    "overshoot",
    "runs past",
    "relevels",
    "releveling",
    "misses the floor",
    "between floors",
    "zone",
    "magnet",
    "hand's breadth",
    "uneven",
    "wrong floor",
    "lost its position",
    "slowdown",
    "creeps",
  ],
  "drive and motor": [
    "drive",
    "inverter",
    "motor",
    "jerk",
    "jerky",
    "judders",
    "vibrates",
    "shakes",
    "overspeed",
    "hums",
    "does not start",
    "stalls",
    "encoder",
    "machine noise",
  ],
  brake: ["brake", "brakes", "grinding on stop", "rolls back", "brake squeal", "sinks when stopped"],
  "controller and power supply": [
    "power",
    "no power",
    "dead",
    "fuse",
    "tripped out",
    "breaker",
    "controller",
    "display blank",
    "phase",
    "supply",
    "resets itself",
    "brownout",
    "completely dead",
  ],
  "landing and car panels": [
    "button",
    "buttons",
    "call button",
    "landing call",
    "landing calls",
    "indicator",
    "display",
    "key switch",
    "panel",
    "car call",
    "calls dead",
    "lamp",
    "arrow",
  ],
  "panel bus and cabling": [
    "bus",
    "panels dead",
    "all panels",
    "several floors dead",
    "cable",
    "wiring",
    "terminator",
    "travelling cable",
    "trailing cable",
  ],
  "suspension and traction": [
    "rope",
    "ropes",
    "slip",
    "slips",
    "traction",
    "sheave",
    "belt",
    "suspension",
    "counterweight",
    "bounces",
  ],
  "governor and safety gear": [
    "governor",
    "safety gear",
    "gripped",
    "wedged",
    "jammed in the shaft",
    "governor rope",
  ],
  "buffers, pit and shaft": [
    "pit",
    "water in the pit",
    "buffer",
    "shaft",
    "flood",
    "flooded",
    "scraping in the shaft",
    "well",
  ],
  "car, lighting, ventilation": [
    "light",
    "lights",
    "dark",
    "fan",
    "ventilation",
    "mirror",
    "handrail",
    "car floor",
    "ceiling",
    "smell in the car",
    "hot in the car",
  ],
  "alarm and rescue": [
    "alarm",
    "intercom",
    "phone in the lift",
    "emergency phone",
    "voice line",
    "emergency light",
    "no answer on the alarm",
  ],
  hydraulics: ["oil", "hydraulic", "ram", "valve", "sinks", "creeping down", "pump", "smell of oil", "leak"],
  "environment and misuse": [
    "vandal",
    "vandalised",
    "spilled",
    "rubbish",
    "stone",
    "trolley",
    "misuse",
    "hit by",
    "heat",
    "smoke",
    "rain",
    "propped open",
  ],
};

const allPhrases = Object.entries(wordsOfGroup).flatMap(([group, phrases]) =>
  phrases.map((phrase) => ({ group: group as FaultGroup, phrase, weight: phrase.split(" ").length ** 1.5 })),
);

export interface GroupProposal {
  readonly group: FaultGroup;
  readonly because: readonly string[];
}

/** Proposes a fault group from what was said; `not yet known` where no word points anywhere. */
export function proposeFaultGroup(said: string): GroupProposal {
  const text = ` ${said
    .toLowerCase()
    .replaceAll("’", "'")
    .replace(/[^\p{L}\p{N}']+/gu, " ")} `;
  const scores = new Map<FaultGroup, { score: number; because: string[] }>();
  for (const { group, phrase, weight } of allPhrases) {
    if (!text.includes(` ${phrase} `)) continue;
    const known = scores.get(group) ?? { score: 0, because: [] };
    scores.set(group, { score: known.score + weight, because: [...known.because, phrase] });
  }
  let best: GroupProposal & { score: number } = { group: "not yet known", because: [], score: 0 };
  for (const [group, { score, because }] of scores) if (score > best.score) best = { group, because, score };
  return { group: best.group, because: best.because };
}
