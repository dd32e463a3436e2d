import { createElement } from "react";
import { renderToStaticMarkup } from "react-dom/server";
import { describe, expect, it } from "vitest";
import { curveLayout } from "#shared-lib/drawings/curve-layout.ts";
import { landingDetailLayout } from "#shared-lib/drawings/landing-detail.ts";
import { miniChainLayout } from "#shared-lib/drawings/mini-chain.ts";
import { timeSignalsLayout } from "#shared-lib/drawings/time-signals.ts";
import { zoneBarsLayout } from "#shared-lib/drawings/zone-bars-layout.ts";
import { CurvePicture } from "../../../renderer/ui/drawings/curve.tsx";
import { IntervalLine } from "../../../renderer/ui/drawings/interval-line.tsx";
import { DetailPicture } from "../../../renderer/ui/drawings/landing-detail.tsx";
import { ChainPicture } from "../../../renderer/ui/drawings/mini-chain.tsx";
import { SensorsPicture } from "../../../renderer/ui/drawings/sensors-and-magnet.tsx";
import { SignalsPicture } from "../../../renderer/ui/drawings/time-signals.tsx";

const zone = {
  magnetLength: 300,
  sensorSpacing: 60,
  magnetError: -17,
  limit: 200,
  unlocksWith: "both" as const,
  centreTolerance: 5 as number | null,
  levelWords: "level 3",
};

function zonePicture(input: typeof zone): string {
  return renderToStaticMarkup(
    createElement(SensorsPicture, { input, layout: zoneBarsLayout(input, 676, 14) }),
  );
}

describe("red pencil only where it is meant", () => {
  it("marks the zone centre only against the site's own tolerance", () => {
    expect(zonePicture(zone)).toMatch(/class="s halo"[^>]*>−17 centre/);
    expect(zonePicture({ ...zone, centreTolerance: null })).not.toContain("pencil");
    expect(zonePicture({ ...zone, centreTolerance: 20 })).not.toContain("pencil");
  });

  it("dimensions an error in red only when it is outside", () => {
    const input = { magnetLength: 300, sensorSpacing: 60, magnetError: -17, levelWords: "level 3" };
    const picture = (outside: boolean) => {
      const all = { ...input, outside };
      return renderToStaticMarkup(
        createElement(DetailPicture, { input: all, layout: landingDetailLayout(all, 250, 14) }),
      );
    };
    expect(picture(true)).toContain("pencil");
    expect(picture(false)).not.toContain("pencil");
    expect(picture(false)).toContain("17 low");
    expect(picture(true)).toContain("Scale about 1:6");
  });

  it("arches only over the bridged contact", () => {
    const contacts = ["stops", "6", "7"].map((words) => ({ id: words, words, bridged: words === "6" }));
    const markup = renderToStaticMarkup(
      createElement(ChainPicture, { contacts, layout: miniChainLayout(contacts, 300, 14) }),
    );
    expect(markup.match(/chain-arch/g)).toHaveLength(1);
  });
});

describe("pictures say what they show", () => {
  it("gives each a role and a sentence", () => {
    const panel = {
      title: "Seen",
      from: 0,
      to: 10,
      unit: "ms",
      signals: [{ name: "upper", activeLow: true, levels: [{ from: 2, to: 5, state: "on" as const }] }],
      moments: [],
    };
    const signals = renderToStaticMarkup(
      createElement(SignalsPicture, { layout: timeSignalsLayout([panel], 500, 14) }),
    );
    expect(signals).toContain('aria-label="Seen: upper, active low, on 2 to 5 ms."');
    expect(signals).toContain("active low</text>");
    const interval = createElement(IntervalLine, {
      width: 120,
      low: 9,
      high: 23,
      estimate: 17,
      axis: { from: 0, to: 30 },
      label: "between 9 and 23, likely 17",
    });
    expect(renderToStaticMarkup(interval)).toContain('role="img" aria-label="between 9 and 23, likely 17"');
  });

  it("writes words at the lines' ends and needs no legend", () => {
    const input = {
      x: { words: "time", unit: "s" },
      y: { words: "speed", unit: "m/s", fromZero: true },
      series: [
        {
          name: "car",
          points: [
            { x: 0, y: 1.6 },
            { x: 3, y: 0 },
          ],
        },
      ],
      earlier: {
        name: "4 Feb 2026",
        points: [
          { x: 0, y: 1.5 },
          { x: 3, y: 0 },
        ],
      },
      limits: [{ value: 1.8, words: "1.80 limit", wrongSide: "above" as const }],
    };
    const markup = renderToStaticMarkup(
      createElement(CurvePicture, { input, label: "Stops in time", layout: curveLayout(input, 600, 14) }),
    );
    for (const words of [">car<", ">4 Feb 2026<", ">1.80 limit<"]) expect(markup).toContain(words);
    expect(markup).toMatch(/class="construction" d="M/);
  });
});
