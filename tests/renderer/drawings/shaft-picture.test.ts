import fc from "fast-check";
import { createElement } from "react";
import { renderToStaticMarkup } from "react-dom/server";
import { describe, expect, it } from "vitest";
import { shaftLayout } from "#shared-lib/drawings/shaft-layout.ts";
import type { LandingState, ShaftMark } from "#shared-lib/drawings/shaft-section.ts";
import { ShaftPicture } from "../../../renderer/ui/drawings/shaft-picture.tsx";
import { arbitraryLift, arbitraryMarks, eightLandings } from "../../shared-lib/drawings/arbitrary-lift.ts";

const size = { width: 598, textSize: 14, availableHeight: 560 };
const marks: ShaftMark[] = [
  {
    id: "a",
    kind: "failed",
    place: { part: "zone-magnet", landingId: "landing 3" },
    number: 1,
    words: "Zone signal failed",
  },
  {
    id: "b",
    kind: "bridge",
    place: { part: "landing-door", landingId: "landing 6" },
    number: 2,
    words: "Bridge at landing 6",
  },
];
const states: Record<string, LandingState> = {
  "landing 2": { zoneSignals: "passed", landingPanel: "passed" },
  "landing 3": { zoneSignals: "failed", landingPanel: "passed" },
};

function painted(carLevelMetres: number, live: boolean) {
  const handlers = live ? { onCarMove: () => undefined, onChoose: () => undefined } : {};
  return renderToStaticMarkup(
    createElement(ShaftPicture, {
      lift: eightLandings,
      layout: shaftLayout(eightLandings, { ...size, marks }),
      marks,
      landingStates: states,
      carLevelMetres,
      ...handlers,
    }),
  );
}

function sensorStates(markup: string): string[] {
  return [...markup.matchAll(/data-sensor="(\w+)" data-state="(\w+)"/g)].map(
    (found) => `${found[1]} ${found[2]}`,
  );
}

describe("the painted shaft section", () => {
  it("fills the sensors that are on, and says so to a reader", () => {
    expect(sensorStates(painted(8.8, true))).toEqual(["upper on", "lower on"]);
    expect(sensorStates(painted(8.8 - 0.15, true))).toEqual(["upper on", "lower off"]);
    expect(sensorStates(painted(7.4, true))).toEqual(["upper off", "lower off"]);
    expect(painted(8.8, true)).toContain('aria-valuetext="+8.80\u00a0m, landing 3; upper on, lower on"');
  });

  it("can be worked by keyboard: slider, one stop for the rows, then switches, pit, machine and each mark", () => {
    const markup = painted(8.8, true);
    expect(markup.match(/role="slider"/g)).toHaveLength(1);
    expect(markup.match(/tabindex="0"/g)).toHaveLength(1 + 1 + 4 + 1 + 1 + marks.length);
    expect(markup.match(/tabindex="-1"/g)).toHaveLength(7);
  });

  it("names every landing with its states in words, not by colour alone", () => {
    const markup = painted(8.8, true);
    expect(markup).toContain("Landing 3, Third, +8.80 m: zone signals failed, landing panel passed");
    expect(markup).toContain("Landing 7, Terrace, +20.00 m: zone signals unchecked, landing panel unchecked");
    expect(markup).toContain("Mark 2, bridge open: Bridge at landing 6");
    expect(markup).toMatch(/>failed<\/text>/);
  });

  it("is a still picture where nothing can be moved or chosen", () => {
    const markup = painted(8.8, false);
    expect(markup).not.toMatch(/role="(slider|button)"|tabindex/);
  });

  it("draws what is recorded: ropes only with a roping, no magnet body without a length", () => {
    const without = { ...eightLandings, roping: null, magnetLengthMetres: null };
    const markup = renderToStaticMarkup(
      createElement(ShaftPicture, {
        lift: without,
        layout: shaftLayout(without, { ...size, marks: [] }),
        marks: [],
        landingStates: {},
        carLevelMetres: 0,
      }),
    );
    expect(markup).not.toContain("thin rope");
    expect(painted(0, false)).toContain("thin rope");
    expect(sensorStates(markup)).toEqual(["upper unknown", "lower unknown"]);
  });

  it("never paints a number that is not one, whatever the lift and its marks", () => {
    const drawn = arbitraryLift.chain((lift) =>
      fc.tuple(fc.constant(lift), arbitraryMarks(lift), fc.integer({ min: 250, max: 1200 })),
    );
    fc.assert(
      fc.property(drawn, ([lift, someMarks, width]) => {
        const named = { ...lift, landings: lift.landings.map((landing) => ({ ...landing, name: "" })) };
        const plain = someMarks.map((mark) => ({ ...mark, words: "" }));
        const layout = shaftLayout(named, { ...size, width, marks: plain });
        const level = named.landings[0]?.levelMetres ?? 0;
        const markup = renderToStaticMarkup(
          createElement(ShaftPicture, {
            lift: named,
            layout,
            marks: plain,
            landingStates: {},
            carLevelMetres: level,
            onCarMove: () => undefined,
          }),
        );
        expect(markup).not.toMatch(/NaN|Infinity|undefined/);
      }),
      { numRuns: 60 },
    );
  });
});
