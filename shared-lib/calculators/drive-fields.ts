/** Fields of sheave and roping, the same for every calculator of the drive. */
export const sheaveDiameterField = {
  kind: "number",
  key: "sheaveDiameter",
  label: "Sheave diameter",
  help: "At the middle of the rope, not at the rim.",
  optional: false,
  quantity: "length",
  unit: "mm",
  range: [0.05, 3],
  step: 0.01,
  digits: 0,
  prefilledFrom: "lift.sheaveDiameter",
} as const;

export const ropingField = {
  kind: "choice",
  key: "roping",
  label: "Roping",
  optional: false,
  options: [
    { id: "1:1", words: "1:1" },
    { id: "2:1", words: "2:1" },
    { id: "4:1", words: "4:1" },
  ],
  prefilledFrom: "lift.roping",
} as const;

export const ratedLoadField = {
  kind: "number",
  key: "ratedLoad",
  label: "Rated load",
  optional: false,
  quantity: "mass",
  unit: "kg",
  range: [40, 20_000],
  step: 10,
  digits: 0,
  prefilledFrom: "lift.ratedLoad",
} as const;

export const ratedSpeedField = {
  kind: "number",
  key: "speed",
  label: "Rated speed",
  optional: false,
  quantity: "speed",
  unit: "m/s",
  range: [0.05, 20],
  step: 0.05,
  digits: 2,
  prefilledFrom: "lift.ratedSpeed",
} as const;
