import { useId } from "react";
import type { UnitSystem } from "#shared-lib/quantities.ts";
import { HatchPatterns, hatchesOf } from "../../ui/drawings/hatch-patterns.tsx";
import { MeasuredDrawing } from "../../ui/drawings/measured-drawing.tsx";
import { type GrooveDrawing, type GroovePicture, groovePicture, grooveSentence } from "./groove-picture.ts";

interface GrooveProps {
  readonly drawing: GrooveDrawing;
  readonly system: UnitSystem;
}

/** One groove of the traction sheave in section with its rope and its two angles. */
export function Groove({ drawing, system }: GrooveProps) {
  return (
    <MeasuredDrawing>
      {(size) => (
        <Picture
          picture={groovePicture(drawing, size.width, size.textSize, system)}
          label={grooveSentence(drawing)}
        />
      )}
    </MeasuredDrawing>
  );
}

interface PictureProps {
  readonly picture: GroovePicture;
  readonly label: string;
}

function Picture({ picture, label }: PictureProps) {
  const id = useId();
  const { width, height, middle, radius, undercut, flanks, textSize } = picture;
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
        <path className="bare" d={picture.body} fill={hatchesOf(id).cut} />
        <path className="cut" d={picture.outline} />
        <circle className="fillp" cx={middle.x} cy={middle.y} r={radius} />
        <path className="bar" d={picture.contact} />
        <path className="thin edge" d={flanks.path} />
        <text className="c halo" x={flanks.at.x} y={flanks.at.y}>
          {flanks.words}
        </text>
        {undercut === null ? null : (
          <>
            <path className="thin edge" d={undercut.path} />
            <text className="c halo" x={undercut.at.x} y={undercut.at.y}>
              {undercut.words}
            </text>
          </>
        )}
        {picture.rope === null ? null : (
          <text className="c q" x={middle.x} y={middle.y - radius * 0.12 - textSize * 1.3}>
            {picture.rope}
          </text>
        )}
      </svg>
    </div>
  );
}
