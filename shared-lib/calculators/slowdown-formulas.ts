import type { Formula } from "../formulas/formula.ts";
import { derived } from "./source.ts";

export const kinematics = derived("kinematics of a stop with limited jerk");

export const slowdownFormulas: readonly Formula[] = [
  {
    name: "Stop with limited jerk",
    expression:
      "t = v/a + a/(2*j_1) + a/(2*j_2); s = v^2/(2*a) + v*a/(2*j_1) - a^3/(24*j_1^2) + a^3/(24*j_2^2); a <= sqrt(2*v*j_1*j_2/(j_1 + j_2))",
    symbols: {
      t: ["s", "stopping time without reaction"],
      s: ["m", "stopping distance"],
      v: ["m/s", "speed at the switch"],
      a: ["m/s²", "retardation, or the largest one reached"],
      j_1: ["m/s³", "jerk at the start"],
      j_2: ["m/s³", "jerk at the end"],
    },
    source: kinematics,
  },
  {
    name: "Distance of the switch",
    expression: "d >= v*t_r + s + m",
    symbols: {
      d: ["m", "distance of the switch before the level"],
      v: ["m/s", "speed at the switch"],
      t_r: ["s", "total reaction time"],
      s: ["m", "stopping distance"],
      m: ["m", "margin"],
    },
    source: kinematics,
  },
];
