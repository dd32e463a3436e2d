import type { Formula } from "../formulas/formula.ts";
import { standardGravity } from "./drive-physics.ts";
import {
  dissipationSource,
  gravitySource,
  guidedSource,
  linearSource,
  trippingSource,
} from "./governor-judgement.ts";

const v = ["m/s", "rated speed"] as const;

export const governorFormulas: readonly Formula[] = [
  {
    name: "Tripping speed, progressive safety gear above 1.0 m/s",
    expression: "v_t >= 1.15*v; v_t < 1.25*v + c/v",
    symbols: { v_t: ["m/s", "tripping speed of the car governor"], v },
    constants: { c: [0.25, "m^2/s^2", "0.25 m²/s²"] },
    source: trippingSource,
  },
  {
    name: "Other upper bounds",
    expression: "v_t < v_1",
    symbols: {
      v_t: ["m/s", "tripping speed of the car governor"],
      v_1: ["m/s", "instantaneous 0.8, captive roller 1.0, progressive up to 1.0 m/s rated speed 1.5 m/s"],
    },
    source: trippingSource,
  },
  {
    name: "Stroke of a linear buffer, and at least 65 mm",
    expression: "s >= k*v^2",
    symbols: { s: ["mm", "stroke"], v },
    constants: { k: [0.135, "s^2/m", "0.135 s²/m"] },
    source: linearSource,
  },
  {
    name: "Stroke of an energy dissipation buffer",
    expression: "s >= k*v^2",
    symbols: {
      s: ["mm", "stroke"],
      v: [
        "m/s",
        "rated speed; above 2.5 m/s with monitored slowdown the contact speed, then at least 420 mm",
      ],
    },
    constants: { k: [0.0674, "s^2/m", "0.0674 s²/m"] },
    source: dissipationSource,
  },
  {
    name: "Guided travel beyond the compressed opposite buffer",
    expression: "h >= k*v^2",
    symbols: { h: ["mm", "guided travel"], v },
    constants: { k: [0.035, "s^2/m", "0.035 s²/m"] },
    source: guidedSource,
  },
  {
    name: "Stop by gravity at 115 % of rated speed",
    expression: "s_g = (1.15*v)^2/(2*g)",
    symbols: { s_g: ["mm", "distance in which gravity stops a rising car"], v },
    constants: { g: [standardGravity, "m/s^2", "free fall, 9.80665 m/s²"] },
    source: gravitySource,
  },
];
