import type { Formula } from "../formulas/formula.ts";
import { standardGravity } from "./drive-physics.ts";
import { clause, derived, type Source } from "./source.ts";

export const methodSource: Source = {
  status: "published",
  document: "",
  edition: "",
  clause: "",
  words: "motor current up and down over the load, read at mid travel; named after TSG T7001",
};
export const statedSource = clause(
  "second-hand",
  "EN 81-20",
  "2020",
  "6.3.3",
  "Balance as stated by the installer",
);
export const intervalSource = derived("two straight lines of least squares, interval by Fieller's theorem");
export const emptySource = derived("power of the empty car up and down");

const share = ["%", "load as a share of the rated load"] as const;

export const balanceFormulas: readonly Formula[] = [
  {
    name: "Where the lines up and down meet",
    expression: "I_u = b_u + m_u*x; I_d = b_d + m_d*x; q = (b_d - b_u)/(m_u - m_d)",
    symbols: {
      I_u: ["A", "current up; power is taken the same way"],
      I_d: ["A", "current down"],
      x: share,
      q: ["%", "balanced share of the rated load"],
      b_u: ["A", "line up at the empty car"],
      b_d: ["A", "line down at the empty car"],
      m_u: ["A", "slope up, for the whole rated load"],
      m_d: ["A", "slope down"],
    },
    source: methodSource,
  },
  {
    name: "Interval of the meeting point: all x for which",
    expression:
      "d = b_u - b_d + (m_u - m_d)*x; h_u = 1/n_u + (x - x_u)^2/S_u; h_d = 1/n_d + (x - x_d)^2/S_d; s^2 = (r_u^2 + r_d^2)/(n_u + n_d - 4); d^2 <= t^2*s^2*(h_u + h_d)",
    symbols: {
      b_u: ["A", "line up at the empty car"],
      b_d: ["A", "line down at the empty car"],
      m_u: ["A", "slope up, for the whole rated load"],
      m_d: ["A", "slope down"],
      x: share,
      d: ["A", "distance of the two lines"],
      h_u: ["one", "how far this load lies from the readings up"],
      h_d: ["one", "how far this load lies from the readings down"],
      t: ["one", "Student's t for 95 %"],
      s: ["A", "scatter of the readings about their lines"],
      r_u: ["A", "root of the summed squares of reading less line, up"],
      r_d: ["A", "root of the summed squares of reading less line, down"],
      n_u: ["pieces", "readings up"],
      n_d: ["pieces", "readings down"],
      x_u: ["%", "mean load of the readings up"],
      x_d: ["%", "mean load of the readings down"],
      S_u: ["one", "sum of the squares of load less mean load, up"],
      S_d: ["one", "sum of the squares of load less mean load, down"],
    },
    source: intervalSource,
  },
  {
    name: "From the empty car alone",
    expression: "q = (N_d/v_d - N_u/v_u)/(2*Q*g)",
    symbols: {
      q: ["%", "balanced share of the rated load"],
      N_d: ["kW", "power at the motor shaft, down"],
      N_u: ["kW", "power at the motor shaft, up"],
      v_d: ["m/s", "car speed down"],
      v_u: ["m/s", "car speed up"],
      Q: ["kg", "rated load"],
    },
    constants: { g: [standardGravity, "m/s^2", "free fall, 9.80665 m/s²"] },
    source: emptySource,
  },
];
