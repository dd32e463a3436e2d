import { useId } from "react";
import { signedNumber } from "#shared-lib/drawings/axis-steps.ts";
import type { PlacedBar, ZoneBarsInput, ZoneBarsLayout } from "#shared-lib/drawings/zone-bars-layout.ts";
import { zoneBarsLayout, zoneBarsSentence } from "#shared-lib/drawings/zone-bars-layout.ts";
import type { Hatches } from "./hatch-patterns.tsx";
import { HatchPatterns, hatchesOf } from "./hatch-patterns.tsx";
import { MeasuredDrawing } from "./measured-drawing.tsx";
import { ZoneWell } from "./zone-well.tsx";

/** Left the well with the car level, right the car positions at which each signal is on, on one height axis. */
export function SensorsAndMagnet(props: ZoneBarsInput) {
  return (
    <MeasuredDrawing>
      {(size) => <SensorsPicture input={props} layout={zoneBarsLayout(props, size.width, size.textSize)} />}
    </MeasuredDrawing>
  );
}

interface SensorsProps {
  readonly input: ZoneBarsInput;
  readonly layout: ZoneBarsLayout;
}

export function SensorsPicture({ input, layout }: SensorsProps) {
  const id = useId();
  const hatches = hatchesOf(id);
  const { width, height } = layout;
  return (
    <div className="drawing-frame">
      <svg
        className="d"
        width={width}
        height={height}
        viewBox={`0 0 ${width} ${height}`}
        role="img"
        aria-label={zoneBarsSentence(input)}
      >
        <HatchPatterns id={id} />
        <ZoneWell input={input} layout={layout} hatch={hatches.cut} />
        <ZoneLimits input={input} layout={layout} />
        {layout.bars.map((bar) => (
          <Bar key={bar.name} bar={bar} layout={layout} hatches={hatches} />
        ))}
        <Centre layout={layout} />
      </svg>
    </div>
  );
}

function ZoneLimits({ input, layout }: SensorsProps) {
  const { barsLeft, barsRight, limitYs, textSize, barsZeroY } = layout;
  const middle = textSize * 0.36;
  const headY = layout.sideBySide ? textSize : layout.wellBottom + textSize * 1.6;
  return (
    <>
      <text className="q" x={barsLeft} y={headY}>
        Car positions at which each signal is on, mm
      </text>
      {layout.sideBySide ? null : (
        <path className="thin chain" d={`M${barsLeft} ${barsZeroY}H${barsRight}`} />
      )}
      <path
        className="limit"
        d={`M${barsLeft} ${limitYs.upper}H${barsRight}M${barsLeft} ${limitYs.lower}H${barsRight}`}
      />
      <text x={barsRight + 8} y={limitYs.upper + middle}>{`+${input.limit} limit`}</text>
      <text x={barsRight + 8} y={limitYs.lower + middle}>{`−${input.limit} limit`}</text>
    </>
  );
}

interface BarProps {
  readonly bar: PlacedBar;
  readonly layout: ZoneBarsLayout;
  readonly hatches: Hatches;
}

const anchors = { start: "", middle: "c", end: "e" } as const;

/** Filled with ink: the bar that unlocks, as the lift's record says. */
function Bar({ bar, layout, hatches }: BarProps) {
  const footY = layout.height - layout.textSize * 1.75;
  const alone = bar.name === "upper" || bar.name === "lower";
  return (
    <>
      {bar.pieces.map((piece) => {
        const box = { x: bar.x, y: piece.top, width: 20, height: Math.max(0, piece.bottom - piece.top) };
        return (
          <g key={piece.top}>
            <rect className={bar.unlocks ? "filled" : "fillp"} {...box} />
            {alone || bar.unlocks ? null : <rect className="bare" {...box} fill={hatches.soft} />}
          </g>
        );
      })}
      {bar.ends.map((end) => (
        <text key={`${end.text} ${end.y}`} className={`${anchors[end.align]} halo`} x={end.x} y={end.y}>
          {end.text}
        </text>
      ))}
      {alone && bar.centreY !== null ? <path className="thin" d={`M${bar.x - 4} ${bar.centreY}h28`} /> : null}
      <text className="c b" x={bar.centreX} y={footY}>
        {bar.name}
      </text>
      <text className="c q" x={bar.centreX} y={footY + layout.textSize * 1.25}>
        {bar.foot}
      </text>
    </>
  );
}

/** The centre is red only when it is outside the site's own tolerance; without one it stands without a verdict. */
function Centre({ layout }: { readonly layout: ZoneBarsLayout }) {
  const { centre, bars } = layout;
  const either = bars.at(-1);
  if (!centre || !either) return null;
  const y = layout.barsZeroY - centre.value * layout.pixelsPerMillimetre;
  const pen = centre.outside ? "pencil" : "edge";
  const lines = bars
    .filter((bar) => bar.name === "both" || bar.name === "either")
    .filter((bar) => bar.pieces.length > 0);
  const words = `${signedNumber(Math.round(centre.value), 0)} centre`;
  return (
    <>
      <path className={`heavy ${pen}`} d={lines.map((bar) => `M${bar.x - 5} ${y}h30`).join("")} />
      <text className={centre.outside ? "s halo" : "halo"} x={either.x + 31} y={y + layout.textSize * 0.36}>
        {words}
      </text>
    </>
  );
}
