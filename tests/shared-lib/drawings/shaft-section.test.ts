import fc from "fast-check";
import { describe, expect, it } from "vitest";
import {
  carPlaceWords,
  carValueText,
  notRecorded,
  sensorsAt,
  switchesActuatedAt,
  writtenLevel,
} from "#shared-lib/drawings/shaft-section.ts";
import { eightLandings } from "./arbitrary-lift.ts";

describe("zone sensors at a car level", () => {
  // Lift engineering facts, example 1a: L = 250, S = 30, e = +4 gives upper [−136, +114], lower [−106, +144].
  const lift = {
    ...eightLandings,
    magnetLengthMetres: 0.25,
    sensorSpacingMetres: 0.03,
    landings: eightLandings.landings.map((landing) => ({ ...landing, magnetErrorMetres: 0.004 })),
  };

  it.each([
    [-137, "off", "off"],
    [-136, "on", "off"],
    [-107, "on", "off"],
    [-106, "on", "on"],
    [114, "on", "on"],
    [115, "off", "on"],
    [144, "off", "on"],
    [145, "off", "off"],
  ])("at %i mm from landing 3 the upper is %s and the lower %s", (millimetres, upper, lower) => {
    expect(sensorsAt(lift, 8.8 + millimetres / 1000)).toEqual({ upper, lower });
  });

  it("sees the upper sensor first when the car moves up, the lower first when it moves down", () => {
    const firstOn = (from: number, step: number) => {
      for (let millimetres = from; ; millimetres += step) {
        const states = sensorsAt(eightLandings, 8.8 + millimetres / 1000);
        if (states.upper === "on" || states.lower === "on") return states;
      }
    };
    expect(firstOn(-300, 1)).toEqual({ upper: "on", lower: "off" });
    expect(firstOn(300, -1)).toEqual({ upper: "off", lower: "on" });
  });

  it("agrees with the two intervals for any magnet, spacing, error and place", () => {
    const millimetres = (min: number, max: number) => fc.integer({ min, max });
    fc.assert(
      fc.property(
        millimetres(50, 600),
        millimetres(0, 400),
        millimetres(-60, 60),
        millimetres(-600, 600),
        (length, spacing, error, place) => {
          const one = {
            ...eightLandings,
            magnetLengthMetres: length / 1000,
            sensorSpacingMetres: spacing / 1000,
            landings: [
              {
                id: "only",
                marking: "0",
                name: "",
                levelMetres: 0,
                entrances: "front" as const,
                magnetErrorMetres: error / 1000,
              },
            ],
          };
          const within = (shift: number) =>
            2 * place >= 2 * error - length + shift && 2 * place <= 2 * error + length + shift ? "on" : "off";
          expect(sensorsAt(one, place / 1000)).toEqual({ upper: within(-spacing), lower: within(spacing) });
        },
      ),
    );
  });

  it("says unknown instead of guessing where a dimension is not recorded", () => {
    const unknown = { upper: "unknown", lower: "unknown" };
    expect(sensorsAt({ ...eightLandings, magnetLengthMetres: null }, 8.8)).toEqual(unknown);
    expect(sensorsAt({ ...eightLandings, sensorSpacingMetres: null }, 8.8)).toEqual(unknown);
    expect(sensorsAt({ ...eightLandings, zoneSensors: null }, 8.8)).toEqual(unknown);
    expect(sensorsAt({ ...eightLandings, zoneSensors: 1, sensorSpacingMetres: null }, 8.8)).toEqual({
      upper: "on",
      lower: "unknown",
    });
  });
});

describe("words of the drawing", () => {
  it("writes levels with sign, two decimals and a real minus", () => {
    expect([8.8, 0, -1.3, -0.0004].map(writtenLevel)).toEqual(["+8.80", "±0.00", "−1.30", "±0.00"]);
  });

  it("reads the car's place and its sensors", () => {
    expect(carValueText(eightLandings, 8.8)).toBe("+8.80\u00a0m, landing 3; upper on, lower on");
    expect(carPlaceWords(eightLandings, 8.77)).toBe("30 mm below landing 3");
    expect(carPlaceWords(eightLandings, 10)).toBe("between landings 3 and 4");
    expect(carPlaceWords(eightLandings, -0.6)).toBe("below landing 0");
    expect(carPlaceWords({ ...eightLandings, landings: [] }, 1)).toBe("no landing recorded");
  });

  it("knows which terminal switches the car has reached", () => {
    expect(switchesActuatedAt(eightLandings, 10)).toEqual([]);
    expect(switchesActuatedAt(eightLandings, 18.7)).toEqual(["up slowdown"]);
    expect(switchesActuatedAt(eightLandings, 20.12)).toEqual(["up final", "up slowdown"]);
    expect(switchesActuatedAt(eightLandings, -0.12)).toEqual(["down slowdown", "down final"]);
  });

  it("names everything that nobody recorded, and nothing else", () => {
    expect(notRecorded(eightLandings)).toEqual([]);
    const bare = { ...eightLandings, roping: null, pitDepthMetres: null, magnetLengthMetres: null };
    expect(notRecorded(bare)).toEqual(["pit depth", "roping", "magnet length"]);
  });
});
