import type { PlannedCallout } from "./planned-callout.ts";
import type { DemonstrationLift, DemonstrationNote } from "./random-callouts.ts";
import type { SeededRandom } from "./seeded-random.ts";

export interface StoryFrame {
  readonly now: number;
  readonly random: SeededRandom;
  readonly lift: (title: string) => DemonstrationLift;
  readonly note: (key: string) => DemonstrationNote | undefined;
  readonly engineer: (name: string) => string;
}

const minute = 60_000;
const day = 24 * 60 * minute;

interface StoryCallout {
  readonly title: string;
  readonly daysAgo: number;
  readonly said: string;
  readonly engineer: string;
  readonly noteKey: string | null;
  readonly causeKey?: string;
  readonly cause?: string;
  readonly fix?: string;
  readonly more?: Partial<PlannedCallout>;
}

function storyCallout(frame: StoryFrame, story: StoryCallout): PlannedCallout {
  const lift = frame.lift(story.title);
  const note = story.noteKey ? frame.note(story.noteKey) : undefined;
  const cause = note?.causes.find((candidate) => candidate.key === story.causeKey);
  const fix =
    story.cause && story.fix
      ? {
          cause: story.cause,
          fix: story.fix,
          noteKey: cause ? (note?.starterKey ?? null) : null,
          causeKey: cause?.key ?? null,
        }
      : null;
  const arrivedAfter = 25 + frame.random.integer(0, 30);
  return {
    liftId: lift.id,
    receivedAt: Math.floor((frame.now - story.daysAgo * day) / minute) * minute,
    said: story.said,
    group: note?.faultGroup ?? "not yet known",
    caller: lift.callers[0] ?? "",
    callBack: lift.telephone,
    engineerId: frame.engineer(story.engineer),
    passedAfter: 4,
    arrivedAfter,
    leftAfter: arrivedAfter + 40 + frame.random.integer(0, 50),
    found: story.cause ?? "Runs on arrival, nothing seen.",
    done: story.fix ?? "Reset; ran it through all landings.",
    fix,
    ending: fix ? "repaired" : "nothing found",
    chargeable: false,
    ...story.more,
  };
}

/** One lift whose zone sensors were swapped at a replacement. */
function swappedSensors(frame: StoryFrame): PlannedCallout[] {
  const title = "Old Ropery Lofts, Lift 1";
  const common = { title, engineer: "Teo Marlow", noteKey: "zone-signals-reversed" };
  return [
    storyCallout(frame, { ...common, daysAgo: 174, said: "overshoots every floor then relevels" }),
    storyCallout(frame, { ...common, daysAgo: 171, said: "finds the floor, loses it, tries again" }),
    storyCallout(frame, {
      ...common,
      daysAgo: 166,
      said: "runs past every landing and creeps back, since the sensors were renewed",
      causeKey: "crossed-wires",
      cause: "Zone sensor leads swapped on the car roof",
      fix: "Put the two leads right at the car-roof terminals; order seen up and down at every landing.",
    }),
  ];
}

/** One lift whose landing panel bus terminator went missing after flooding. */
function floodedBus(frame: StoryFrame): PlannedCallout[] {
  const title = "Breakwater Hotel, Service";
  const bus = { title, engineer: "Suri Fenn", noteKey: "panel-bus-terminator-missing" };
  return [
    storyCallout(frame, {
      title,
      engineer: "Suri Fenn",
      noteKey: "water-in-pit",
      daysAgo: 297,
      said: "sea came over the promenade, water in the pit",
      causeKey: "leak-above",
      cause: "Pit flooded by spring tide",
      fix: "Isolated, pumped out, dried and proved; pit equipment checked.",
    }),
    storyCallout(frame, { ...bus, daysAgo: 290, said: "landing calls come and go at the lower floors" }),
    storyCallout(frame, { ...bus, daysAgo: 281, said: "landing calls dead at 0 and 1, worse in the damp" }),
    storyCallout(frame, {
      ...bus,
      daysAgo: 276,
      said: "panels flicker, calls lost on all floors",
      causeKey: "terminator-missing",
      cause: "Bus terminator missing at the lowest landing since the flood",
      fix: "New terminator fitted; 61 ohm between the bus lines with power off.",
    }),
  ];
}

/** One lift getting worse month by month: brake callouts that come closer together. */
function gettingWorse(frame: StoryFrame): PlannedCallout[] {
  const gaps = [92, 74, 66, 57, 52, 45, 40, 36, 33, 31, 29, 26, 24, 21, 19, 17, 15, 13, 12];
  const said = [
    "rough stop at every landing",
    "stops with a jolt, brake squeals",
    "brake noise, car rolls a hand’s breadth",
    "stops late and relevels",
    "smell of hot brake",
  ];
  let daysAgo = gaps.reduce((sum, gap) => sum + gap, 6);
  return gaps.map((gap, index) => {
    daysAgo -= gap;
    return storyCallout(frame, {
      title: "Fulmar Terrace, Lift 1",
      daysAgo: daysAgo + 0.3,
      said: said[index % said.length] ?? "",
      engineer: index % 2 === 0 ? "Bram Oakes" : "Teo Marlow",
      noteKey: index % 3 === 2 ? "brake-slides" : "brake-drags",
      causeKey: index % 3 === 2 ? "lining-worn" : "gap-small",
      cause: index % 3 === 2 ? "Brake lining worn" : "Brake gap too small",
      fix: index % 3 === 2 ? "Lining measured, adjusted, to be renewed." : "Brake gap adjusted again.",
    });
  });
}

/** One site with three repeats of a door fault, the last one from today. */
function doorRepeats(frame: StoryFrame): PlannedCallout[] {
  const common = { title: "Saltpan Court, Lift 1", noteKey: "doors-reopen-one-landing" };
  const cleaned = {
    causeKey: "sill-dirt",
    cause: "Door edge dirty and out of line",
    fix: "Door edge cleaned and realigned.",
  };
  return [
    storyCallout(frame, {
      ...common,
      ...cleaned,
      daysAgo: 49,
      said: "reopens at the lobby",
      engineer: "Bram Oakes",
    }),
    storyCallout(frame, {
      ...common,
      ...cleaned,
      daysAgo: 28,
      said: "won’t shut at lobby",
      engineer: "Suri Fenn",
    }),
    storyCallout(frame, { ...common, daysAgo: 12, said: "opens again and again", engineer: "Bram Oakes" }),
    storyCallout(frame, {
      ...common,
      daysAgo: 0.05,
      said: "doors keep reopening at the lobby, won’t leave, third time she rang about it",
      engineer: "Bram Oakes",
      more: { passedAfter: 6, until: "passed on" },
    }),
  ];
}

/** What is open now, beside the repeat above and the lift with the open bridge. */
function openNow(frame: StoryFrame): PlannedCallout[] {
  const ago = (minutes: number): number => minutes / (24 * 60);
  return [
    storyCallout(frame, {
      title: "Net Loft Studios, Lift 1",
      daysAgo: ago(6),
      said: "one person stuck between 2 and 3",
      engineer: "Bram Oakes",
      noteKey: "entrapment-nothing-found",
      more: { inside: "people inside", passedAfter: 2, until: "passed on" },
    }),
    storyCallout(frame, {
      title: "Breakwater Hotel, Service",
      daysAgo: ago(61),
      said: "landing calls dead at 0 and 1",
      engineer: "Suri Fenn",
      noteKey: "panel-bus-terminator-missing",
      more: { passedAfter: 3, arrivedAfter: 35, until: "arrived" },
    }),
    storyCallout(frame, {
      title: "Old Ropery Lofts, Lift 1",
      daysAgo: ago(34),
      said: "runs past 4, then creeps back",
      engineer: "Teo Marlow",
      noteKey: "zone-magnet-moved",
      more: { passedAfter: 5, until: "passed on" },
    }),
    storyCallout(frame, {
      title: "Limekiln Mill, Goods lift",
      daysAgo: ago(12),
      said: "slow to level, smell of oil",
      engineer: "Teo Marlow",
      noteKey: "hydraulic-oil-missing",
      more: { until: "received" },
    }),
  ];
}

export function storyCallouts(frame: StoryFrame): PlannedCallout[] {
  return [swappedSensors, floodedBus, gettingWorse, doorRepeats, openNow].flatMap((story) => story(frame));
}

/** The callout of the lift with the open bridge: a landing 3 that stops short, and a bridge found necessary at 6. */
export function bridgeCallout(frame: StoryFrame): PlannedCallout {
  return storyCallout(frame, {
    title: "Kittiwake House, Lift 2",
    daysAgo: 110 / (24 * 60),
    said: "stops short at 3, step up out of the car",
    engineer: "Ines Calder",
    noteKey: "zone-magnet-moved",
    more: { passedAfter: 3, arrivedAfter: 30, until: "made safe" },
  });
}
