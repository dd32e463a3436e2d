import { useId } from "react";
import type { StepCurveInput, StepCurveLayout } from "#shared-lib/drawings/step-curve.ts";
import { stepCurveLayout } from "#shared-lib/drawings/step-curve.ts";
import { HatchPatterns, hatchesOf } from "./hatch-patterns.tsx";
import { MeasuredDrawing } from "./measured-drawing.tsx";

/** Callouts added up over time as steps, the fit in construction blue, its uncertainty hatched. */
export function StepCurve(props: StepCurveInput & { readonly label: string; readonly standsOut?: boolean }) {
  return (
    <MeasuredDrawing>
      {(size) => (
        <StepPicture
          input={props}
          label={props.label}
          standsOut={props.standsOut ?? false}
          layout={stepCurveLayout(props, size.width, size.textSize)}
        />
      )}
    </MeasuredDrawing>
  );
}

interface StepProps {
  readonly input: StepCurveInput;
  readonly label: string;
  readonly standsOut: boolean;
  readonly layout: StepCurveLayout;
}

export function StepPicture({ input, label, standsOut, layout }: StepProps) {
  const id = useId();
  const { width, height, plot, textSize } = layout;
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
        <StepAxes layout={layout} />
        {layout.band === "" ? null : (
          <path className="bare" d={layout.band} fill={hatchesOf(id).construction} opacity={0.8} />
        )}
        {layout.fit === "" ? null : <path className="construction" d={layout.fit} />}
        <path className="limit" d={layout.steps} />
        <path className="thin" d={`M${plot.left} ${plot.bottom}H${plot.right}`} />
        {layout.notes.map((note) => (
          <g key={note.words}>
            <path className="thin" d={`M${note.x} ${note.bottom}V${note.top}`} />
            <text className="c halo" x={note.x} y={note.top - 6}>
              {note.words}
            </text>
          </g>
        ))}
        {input.endWords.map((words, index) => (
          <text
            key={words}
            className={`${standsOut ? "s" : "b"} ${index === 0 ? "large" : ""}`}
            x={layout.end.x}
            y={layout.end.y + textSize * (0.4 + index * 1.2)}
          >
            {words}
          </text>
        ))}
      </svg>
    </div>
  );
}

function StepAxes({ layout }: { readonly layout: StepCurveLayout }) {
  const { plot, textSize } = layout;
  return (
    <>
      {layout.yTicks.map((tick) => (
        <g key={tick.y}>
          <path className="thin hair" d={`M${plot.left} ${tick.y}H${plot.right}`} />
          <text className="e q" x={plot.left - 6} y={tick.y + textSize * 0.36}>
            {tick.words}
          </text>
        </g>
      ))}
      {layout.xTicks.map((tick) => (
        <g key={tick.x}>
          <path className="thin" d={`M${tick.x} ${plot.bottom}v5`} />
          <text className="c q" x={tick.x} y={plot.bottom + textSize * 1.4}>
            {tick.words}
          </text>
        </g>
      ))}
    </>
  );
}
