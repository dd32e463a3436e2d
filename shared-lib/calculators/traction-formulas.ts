import type { Formula } from "../formulas/formula.ts";
import { clause } from "./source.ts";

export const conditionSource = clause(
  "second-hand",
  "EN 81-50",
  "2020",
  "5.11.2.1",
  "forces over the sheave against e^(f α): at most while loading and braking, at least when stalled",
);
export const frictionSource = clause(
  "published",
  "EN 81-50",
  "2020",
  "5.11.2.3",
  "friction factor by groove, 0.1 loading, 0.1/(1 + v/10) braking with the speed of the rope, 0.2 stalled",
);
export const caseSource = clause(
  "second-hand",
  "EN 81-20",
  "2020",
  "5.5.3",
  "125 % load standing; emergency braking with at least 0.5 m/s², empty and full; stalled: slip, or an electric safety device",
);
export const pressureSource = clause(
  "published",
  "EN 81-1",
  "1985",
  "",
  "pressure of the rope in its groove; no longer in EN 81-20; the form of the pressure is from memory",
);

const g = [9.80665, "m/s^2", "9.80665 m/s², free fall"] as const;

export const tractionFormulas: readonly Formula[] = [
  {
    name: "Loading and emergency braking",
    expression: "T_1/T_2 <= exp(f*alpha)",
    symbols: {
      T_1: ["N", "larger force of the ropes at the sheave"],
      T_2: ["N", "smaller one"],
      f: ["", "friction factor"],
      alpha: ["rad", "angle of wrap"],
    },
    source: conditionSource,
  },
  {
    name: "Stalled: the ropes must slip",
    expression: "T_1/T_2 >= exp(f*alpha)",
    symbols: {
      T_1: ["N", "force on the side that hangs"],
      T_2: ["N", "force of the ropes on the side that rests"],
      f: ["", "friction factor"],
      alpha: ["rad", "angle of wrap"],
    },
    source: conditionSource,
  },
  {
    name: "Friction factor, round groove",
    expression: "f = mu*4*(cos(gamma/2) - sin(beta/2))/(pi - beta - gamma - sin(beta) + sin(gamma))",
    symbols: {
      f: ["", "friction factor"],
      mu: ["", "friction coefficient"],
      beta: ["rad", "undercut angle, whole; 0 without undercut"],
      gamma: ["rad", "groove angle, whole"],
    },
    source: frictionSource,
  },
  {
    name: "Friction factor, V groove, not hardened, loading and braking",
    expression: "f = mu*4*(1 - sin(beta/2))/(pi - beta - sin(beta))",
    symbols: {
      f: ["", "friction factor"],
      mu: ["", "friction coefficient"],
      beta: ["rad", "undercut angle, whole; 0 without undercut"],
    },
    source: frictionSource,
  },
  {
    name: "Friction factor, V groove hardened, or stalled",
    expression: "f = mu/sin(gamma/2)",
    symbols: {
      f: ["", "friction factor"],
      mu: ["", "friction coefficient"],
      gamma: ["rad", "groove angle, whole"],
    },
    source: frictionSource,
  },
  {
    name: "Friction coefficient while braking",
    expression: "mu = mu_0/(1 + v/v_0)",
    symbols: { mu: ["", "friction coefficient"], v: ["m/s", "speed of the rope, roping times car speed"] },
    constants: { mu_0: [0.1, "1", "0.1"], v_0: [10, "m/s", "10 m/s"] },
    source: frictionSource,
  },
  {
    name: "Force on the car side while it brakes going down",
    expression: "T = (P + Q)*(g + a)/r + M*(g + a*(r^2 + 2)/3)",
    symbols: {
      T: ["N", "force of all ropes on the car side"],
      P: ["kg", "empty car with what hangs on it"],
      Q: ["kg", "load"],
      M: ["kg", "ropes on this side, one vertical part"],
      a: ["m/s²", "retardation of the car"],
      r: ["", "roping: 1, 2 or 4"],
    },
    constants: { g },
    source: caseSource,
  },
  {
    name: "Pressure in the groove, against its limit",
    expression:
      "p = T/(n*d*D)*8*cos(beta/2)/(pi - beta - sin(beta)); p_V = T/(n*d*D)*4.5/sin(gamma/2); p <= p_0*(12.5 + 4*v/v_0)/(1 + v/v_0)",
    symbols: {
      p: ["N/mm²", "pressure in a round groove"],
      p_V: ["N/mm²", "pressure in a V groove"],
      T: ["N", "force of all ropes on the car side, rated load, lowest landing"],
      n: ["pieces", "ropes"],
      d: ["mm", "rope diameter"],
      D: ["mm", "sheave diameter"],
      beta: ["rad", "undercut angle"],
      gamma: ["rad", "groove angle"],
      v: ["m/s", "speed of the rope"],
    },
    constants: { p_0: [1e6, "kg/(m*s^2)", "1 N/mm²"], v_0: [1, "m/s", "1 m/s"] },
    source: pressureSource,
  },
];
