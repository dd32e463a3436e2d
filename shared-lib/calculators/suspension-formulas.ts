import type { Formula } from "../formulas/formula.ts";
import { clause } from "./source.ts";

export const fixedSource = clause(
  "second-hand",
  "EN 81-20",
  "2020",
  "5.5.2.2",
  "least safety factor of ropes: 12 with three or more, 16 with two, and never under the value of EN 81-50, 5.12",
);
export const bendSource = clause(
  "second-hand",
  "EN 81-50",
  "2020",
  "5.12",
  "safety factor by equivalent number of pulleys; its diagram covers sheave over rope diameter 34 to 80",
);
export const ratioSource = clause(
  "second-hand",
  "EN 81-20",
  "2020",
  "5.5.2.1",
  "sheave and pulley diameter at least 40 rope diameters",
);
export const diameterSource = clause("second-hand", "EN 81-20", "2020", "5.5.1.2", "rope at least 8 mm");
export const breakingSource = clause(
  "second-hand",
  "EN 12385-5",
  "2021",
  "",
  "least breaking force by construction, diameter and grade",
);

export const suspensionFormulas: readonly Formula[] = [
  {
    name: "Equivalent number of pulleys",
    expression: "N = N_t + K_p*(N_s + 4*N_r); K_p = (D_t/D_p)^4",
    symbols: {
      N: ["", "equivalent number of pulleys"],
      N_t: ["", "that of the traction sheave, by its groove"],
      N_s: ["pieces", "pulleys with simple bends"],
      N_r: ["pieces", "pulleys with reversed bends"],
      K_p: ["", "factor of the pulley diameter"],
      D_t: ["mm", "diameter of the traction sheave"],
      D_p: ["mm", "mean diameter of the pulleys"],
    },
    source: bendSource,
  },
  {
    name: "Least safety factor by bending",
    expression: "S_f = 10^(2.6834 - ln(695850000*N/(D_t/d)^8.567)/ln(77.09*(D_t/d)^(-2.894)))",
    symbols: {
      S_f: ["", "least safety factor"],
      N: ["", "equivalent number of pulleys"],
      D_t: ["mm", "diameter of the traction sheave"],
      d: ["mm", "diameter of the rope"],
    },
    source: bendSource,
  },
  {
    name: "Safety factor of the ropes",
    expression: "S = n*F/(g*((P + Q)/r + M))",
    symbols: {
      S: ["", "least breaking force over the largest force in one rope"],
      n: ["pieces", "ropes"],
      F: ["kN", "least breaking force of one rope"],
      P: ["kg", "empty car"],
      Q: ["kg", "rated load"],
      M: ["kg", "ropes on the car side, one vertical part"],
      r: ["", "roping: 1, 2 or 4"],
    },
    constants: { g: [9.80665, "m/s^2", "9.80665 m/s², free fall"] },
    source: fixedSource,
  },
  {
    name: "Breaking force by construction",
    expression: "F = K*d^2*R",
    symbols: {
      F: ["kN", "least breaking force of one rope"],
      K: ["", "0.330 for 6×19 fibre core, 0.293 for 8×19 fibre core, 0.356 for 8×19 steel core"],
      d: ["mm", "diameter of the rope"],
      R: ["N/mm²", "grade"],
    },
    source: breakingSource,
  },
];
