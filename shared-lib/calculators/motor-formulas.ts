import type { Formula } from "../formulas/formula.ts";
import { standardGravity } from "./drive-physics.ts";
import { derived } from "./source.ts";

export const driveSource = derived("mechanics of the balanced lift and of the rotating field");

const gravity = [standardGravity, "m/s^2", "free fall, 9.80665 m/s²"] as const;

export const motorFormulas: readonly Formula[] = [
  {
    name: "Speed of sheave and motor",
    expression: "n_s = v*r/(pi*D); n_m = n_s*i",
    symbols: {
      n_s: ["1/min", "speed of the sheave"],
      n_m: ["1/min", "speed of the motor"],
      v: ["m/s", "speed of the car"],
      r: ["one", "roping: 1, 2 or 4"],
      D: ["mm", "sheave diameter at the middle of the rope"],
      i: ["one", "gear ratio"],
    },
    source: driveSource,
  },
  {
    name: "Steady power at the motor shaft",
    expression: "P_u = Q*(1 - q)*g*v/eta; P_d = Q*q*g*v/eta",
    symbols: {
      P_u: ["kW", "power with full load up"],
      P_d: ["kW", "power with the empty car down"],
      Q: ["kg", "rated load"],
      q: ["%", "balanced share of the rated load"],
      v: ["m/s", "speed of the car"],
      eta: ["%", "efficiency, motor shaft to car"],
    },
    constants: { g: gravity },
    source: driveSource,
  },
  {
    name: "Torque at the sheave, full load up",
    expression: "M = Q*(1 - q)*g*D/(2*r*eta)",
    symbols: {
      M: ["N·m", "torque, rope weight not counted"],
      Q: ["kg", "rated load"],
      q: ["%", "balanced share of the rated load"],
      D: ["mm", "sheave diameter at the middle of the rope"],
      r: ["one", "roping: 1, 2 or 4"],
      eta: ["%", "efficiency, motor shaft to car"],
    },
    constants: { g: gravity },
    source: driveSource,
  },
  {
    name: "Rotating field and slip",
    expression: "n_0 = 2*f/p; s = (n_0 - n)/n_0",
    symbols: {
      n_0: ["1/min", "synchronous speed"],
      f: ["Hz", "frequency at the motor"],
      p: ["one", "number of poles"],
      s: ["%", "slip"],
      n: ["1/min", "speed of the motor"],
    },
    source: driveSource,
  },
  {
    name: "Power added while accelerating",
    expression: "P_a = m*a*v/eta",
    symbols: {
      P_a: ["kW", "power at the end of acceleration, rotating parts not counted"],
      m: ["kg", "moving masses"],
      a: ["m/s²", "acceleration"],
      v: ["m/s", "speed of the car"],
      eta: ["%", "efficiency, motor shaft to car"],
    },
    source: driveSource,
  },
];
