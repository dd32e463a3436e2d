import type { Formula } from "../formulas/formula.ts";
import { standardGravity } from "./drive-physics.ts";
import { clause, derived } from "./source.ts";

export const distanceModel = derived("distance model: detection, reaction, braking");
export const limitSource = clause(
  "from memory",
  "EN 81-20",
  "2020",
  "5.6.7.5",
  "Stopped within 1.20 m; landing sill to lowest part of the apron at most 0.20 m; sill to lintel at least 1.00 m",
);
export const apronSource = clause(
  "second-hand",
  "EN 81-20",
  "2020",
  "5.4.5.2",
  "Vertical part of the car apron at least 0.75 m",
);

export const unintendedFormulas: readonly Formula[] = [
  {
    name: "Travel until the car stands",
    expression:
      "v_1 = sqrt(2*a*d_0); s_r = v_1*t_r + a*t_r^2/2; v_2 = v_1 + a*t_r; s_b = v_2^2/(2*a_b); s = d_0 + s_r + s_b",
    symbols: {
      v_1: ["m/s", "speed when detected"],
      v_2: ["m/s", "speed when braking begins"],
      a: ["m/s²", "natural acceleration"],
      a_b: ["m/s²", "retardation while braking"],
      d_0: ["mm", "travel until detected"],
      t_r: ["ms", "reaction time"],
      s_r: ["mm", "travel while reacting"],
      s_b: ["mm", "travel while braking"],
      s: ["mm", "whole travel"],
    },
    source: distanceModel,
  },
  {
    name: "Natural acceleration, without friction and rotating parts",
    expression: "a = (P + L - C)*g/(P + L + C)",
    symbols: {
      a: ["m/s²", "natural acceleration, above nothing downwards"],
      P: ["kg", "empty car"],
      L: ["kg", "load in the car"],
      C: ["kg", "counterweight"],
    },
    constants: { g: [standardGravity, "m/s^2", "free fall, 9.80665 m/s²"] },
    source: distanceModel,
  },
  {
    name: "Travel allowed up: the smallest of three",
    expression: "s_u <= c_1; s_u <= c_2 + h_a; s_u <= H - c_3",
    symbols: {
      s_u: ["mm", "travel up"],
      h_a: ["mm", "vertical part of the car apron"],
      H: ["mm", "clear height of the door"],
    },
    constants: {
      c_1: [1.2, "m", "1.20 m from the landing"],
      c_2: [0.2, "m", "0.20 m from landing sill to apron"],
      c_3: [1, "m", "1.00 m from sill to lintel"],
    },
    source: limitSource,
  },
  {
    name: "Travel allowed down: the smaller of two",
    expression: "s_d <= c_1; s_d <= H - c_3",
    symbols: { s_d: ["mm", "travel down"], H: ["mm", "clear height of the door"] },
    constants: {
      c_1: [1.2, "m", "1.20 m from the landing"],
      c_3: [1, "m", "1.00 m from sill to lintel"],
    },
    source: limitSource,
  },
];
