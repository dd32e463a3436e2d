import type { CheckedPlace } from "./lift-drawing.ts";

export const partNames: Readonly<Record<CheckedPlace["part"], string>> = {
  "zone-magnet": "Zone signals",
  "landing-door": "Landing door",
  "landing-panel": "Landing panel",
  switch: "Terminal switches",
  car: "Car",
  pit: "Pit",
  machine: "Machine",
};
