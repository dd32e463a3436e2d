import { useId } from "react";
import type { CurveInput, CurveLayout } from "#shared-lib/drawings/curve-layout.ts";
import { curveLayout } from "#shared-lib/drawings/curve-layout.ts";
import { tickPath } from "#shared-lib/drawings/drawing-paths.ts";
import { HatchPatterns, hatchesOf } from "./hatch-patterns.tsx";
import { MeasuredDrawing } from "./measured-drawing.tsx";

/** Speed, position, voltage along the riser: ink for the data, words at the line's end. `label` is the finding. */
export function Curve(props: CurveInput & { readonly label: string }) {
  return (
    <MeasuredDrawing>
      {(size) => (
        <CurvePicture
          input={props}
          label={props.label}
          layout={curveLayout(props, size.width, size.textSize)}
        />
      )}
    </MeasuredDrawing>
  );
}

interface CurveProps {
  readonly input: CurveInput;
  readonly label: string;
  readonly layout: CurveLayout;
}

export function CurvePicture({ input, label, layout }: CurveProps) {
  const id = useId();
  const { width, height } = layout;
  return (
    <div className="drawing-frame">
      <svg
        className="d"
        width={width}
        height={height}
        viewBox={`0 0 ${width} ${height}`}
        role="img"
        aria-label={label}
      >
        <HatchPatterns id={id} />
        <Axes layout={layout} input={input} />
        <Limits layout={layout} hatch={hatchesOf(id).soft} />
        <Lines layout={layout} />
        {layout.dots.map((dot) => (
          <circle key={dot.key} className={dot.open ? "edge" : "fill"} cx={dot.x} cy={dot.y} r={3.5} />
        ))}
        <Mark layout={layout} />
      </svg>
    </div>
  );
}

function Axes({ layout, input }: Omit<CurveProps, "label">) {
  const { plot, textSize, xTicks, yTicks } = layout;
  return (
    <>
      {yTicks.map((tick) => (
        <g key={tick.at}>
          <path className="thin hair" d={`M${plot.left} ${tick.at}H${plot.right}`} />
          <text className="e q" x={plot.left - 6} y={tick.at + textSize * 0.36}>
            {tick.words}
          </text>
        </g>
      ))}
      <path className="thin" d={`M${plot.left} ${plot.bottom}H${plot.right}`} />
      {xTicks.map((tick) => (
        <g key={tick.at}>
          <path className="thin" d={`M${tick.at} ${plot.bottom}v5`} />
          <text className="c q" x={tick.at} y={plot.bottom + textSize * 1.6}>
            {tick.words}
          </text>
        </g>
      ))}
      <text className="q" x={0} y={textSize}>
        {input.y.words}
      </text>
      <text className="e q" x={plot.right} y={plot.bottom + textSize * 2.7}>
        {input.x.words}
      </text>
    </>
  );
}

function Limits({ layout, hatch }: { readonly layout: CurveLayout; readonly hatch: string }) {
  const { plot, limits, textSize } = layout;
  return limits.map((limit) => (
    <g key={limit.words}>
      {limit.wrong ? (
        <rect
          className="bare"
          x={plot.left}
          width={plot.right - plot.left}
          {...limit.wrong}
          fill={hatch}
          opacity={0.6}
        />
      ) : null}
      <path
        className="thin"
        d={`M${plot.left} ${limit.y}H${plot.right + 4}L${plot.right + 8} ${limit.wordY}`}
      />
      <text className="q" x={plot.right + 10} y={limit.wordY + textSize * 0.36}>
        {limit.words}
      </text>
    </g>
  ));
}

const penClass = {
  solid: "limit",
  dashed: "limit dashes",
  dotted: "limit dots",
  earlier: "construction",
} as const;

function Lines({ layout }: { readonly layout: CurveLayout }) {
  const { plot, textSize } = layout;
  return (
    <>
      {layout.lines.map((line) => (
        <path key={line.name} className={penClass[line.pen]} d={line.path} />
      ))}
      {layout.ends.map((end) => (
        <g key={end.name}>
          {Math.abs(end.y - end.lineY) > 2 ? (
            <path className="thin edge" d={`M${plot.right + 1} ${end.lineY}L${plot.right + 8} ${end.y}`} />
          ) : null}
          <text className={end.pen === "earlier" ? "g" : ""} x={plot.right + 10} y={end.y + textSize * 0.36}>
            {end.name}
          </text>
        </g>
      ))}
    </>
  );
}

function Mark({ layout }: { readonly layout: CurveLayout }) {
  const { mark, plot } = layout;
  if (!mark) return null;
  const pen = mark.failed ? "pencil" : "";
  return (
    <>
      <path className={`thin ${pen}`} d={`M${mark.x} ${plot.bottom}V${mark.y}`} />
      <path className={`heavy ${pen}`} d={tickPath(mark.x, mark.y, 11)} />
      <text
        className={`halo ${mark.failed ? "s" : "b"} ${mark.align === "end" ? "e" : ""}`}
        x={mark.wordX}
        y={mark.wordY}
      >
        {mark.words}
      </text>
    </>
  );
}
