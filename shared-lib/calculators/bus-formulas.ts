import type { Formula } from "../formulas/formula.ts";
import { directCurrentSource, riserSource, terminationSource } from "./bus-judgement.ts";

const ohm = "kg*m^2/(s^3*A^2)";
const volt = "kg*m^2/(s^3*A)";

export const busFormulas: readonly Formula[] = [
  {
    name: "Termination, both terminators on",
    expression: "R = 1/(1/R_0 + 1/(R_0 + 2*rho*l))",
    symbols: {
      R: [
        "Ω",
        "resistance between the two bus lines; the panels' inputs between are taken into account as well",
      ],
      rho: ["Ω/km", "resistance of one conductor per length"],
      l: ["m", "bus length"],
    },
    constants: { R_0: [120, ohm, "one terminator, 120 Ω"] },
    source: terminationSource,
  },
  {
    name: "Length by resistance",
    expression: "l <= 1/(2*rho)*(V_d/(V_t + k*(V_d - V_t)) - 1)*R_T*R_d/(R_d + (n - 1)*R_T)",
    symbols: {
      l: ["m", "bus length"],
      rho: ["Ω/km", "resistance of one conductor per length"],
      n: ["pieces", "panels on the bus"],
    },
    constants: {
      V_d: [1.5, volt, "voltage a panel drives, 1.5 V"],
      V_t: [1, volt, "threshold a panel needs, 1.0 V"],
      k: [0.2, "1", "safety margin"],
      R_T: [118, ohm, "terminator at its lowest, 118 Ω"],
      R_d: [20_000, ohm, "input of a panel, 20 kΩ"],
    },
    source: directCurrentSource,
  },
  {
    name: "Supply drop",
    expression: "Delta_U = I*R_s*n*(n + 1)/2 + n*I*R_f; Delta_U_0 = Delta_U/2",
    symbols: {
      Delta_U: ["V", "drop to the last panel"],
      Delta_U_0: ["V", "shift of the 0 V conductor there"],
      I: ["A", "current of one panel"],
      R_s: ["Ω", "span between two panels, there and back"],
      R_f: ["Ω", "feeder, there and back"],
      n: ["pieces", "panels"],
    },
    source: riserSource,
  },
];
