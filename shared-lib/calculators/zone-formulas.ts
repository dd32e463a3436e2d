import type { Formula } from "../formulas/formula.ts";
import { unlockingZoneSource, zoneGeometry } from "./zone-judgement.ts";

export const zoneFormulas: readonly Formula[] = [
  {
    name: "Length of the zones",
    expression: "l_each = L; l_both = L - S; l_either = L + S",
    symbols: {
      l_each: ["mm", "one signal on"],
      l_both: ["mm", "both signals on"],
      l_either: ["mm", "from the first on to the last off"],
      L: ["mm", "magnet length"],
      S: ["mm", "sensor spacing"],
    },
    source: zoneGeometry,
  },
  {
    name: "Centre and signal delay",
    expression: "e = (e_up + e_down)/2; tau = (e_up - e_down)/(2*v)",
    symbols: {
      e: ["mm", "centre of the zone, up positive"],
      e_up: ["mm", "centre measured moving up"],
      e_down: ["mm", "centre measured moving down"],
      tau: ["ms", "signal delay"],
      v: ["m/s", "check speed"],
    },
    source: zoneGeometry,
  },
  {
    name: "Reach",
    expression: "r_either = (L + S)/2 + abs(e); r_both = (L - S)/2 + abs(e); r_either <= Z; r_both <= Z",
    symbols: {
      r_either: ["mm", "reach where either signal unlocks"],
      r_both: ["mm", "reach where both are needed"],
      L: ["mm", "magnet length"],
      S: ["mm", "sensor spacing"],
      e: ["mm", "centre of the zone"],
      Z: ["mm", "unlocking zone, 200 mm or 350 mm"],
    },
    source: unlockingZoneSource,
  },
  {
    name: "From edge times, moving up, sensors on the car",
    expression: "S = v*(t_lower - t_upper); L = v*(t_off - t_on)",
    symbols: {
      S: ["mm", "sensor spacing"],
      L: ["mm", "magnet length"],
      v: ["m/s", "speed, constant"],
      t_lower: ["ms", "an edge of the lower signal"],
      t_upper: ["ms", "the same edge of the upper signal"],
      t_on: ["ms", "a signal comes on"],
      t_off: ["ms", "the same signal goes off"],
    },
    source: zoneGeometry,
  },
];
