import { tickPath } from "#shared-lib/drawings/drawing-paths.ts";
import type { UnitSystem } from "#shared-lib/quantities.ts";
import { MeasuredDrawing } from "../../ui/drawings/measured-drawing.tsx";
import {
  type BusLineDrawing,
  type BusLinePicture,
  busLinePicture,
  busLineSentence,
} from "./bus-line-picture.ts";

interface BusLineProps {
  readonly drawing: BusLineDrawing;
  readonly system: UnitSystem;
}

/** The bus as one line from the controller through the panels, with what the reading says about its ends. */
export function BusLine({ drawing, system }: BusLineProps) {
  return (
    <MeasuredDrawing>
      {(size) => (
        <Picture
          picture={busLinePicture(drawing, size.width, size.textSize, system)}
          label={busLineSentence(drawing, system)}
        />
      )}
    </MeasuredDrawing>
  );
}

interface PictureProps {
  readonly picture: BusLinePicture;
  readonly label: string;
}

function Picture({ picture, label }: PictureProps) {
  const { width, height, lineY, left, right, textSize, breakX } = picture;
  const gap = breakX === null ? null : breakX + 12;
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
        <path
          className={picture.short ? "limit pencil" : "limit"}
          d={
            gap === null
              ? `M${left} ${lineY}H${right}`
              : `M${left} ${lineY}H${gap - 6}M${gap + 6} ${lineY}H${right}`
          }
        />
        {gap === null ? null : <path d={`M${gap - 9} ${lineY + 9}l6 -18M${gap + 3} ${lineY + 9}l6 -18`} />}
        <Controller picture={picture} />
        <Panels picture={picture} />
        {picture.terminators.map((terminator, index) => (
          <Terminator
            key={terminator.x}
            terminator={terminator}
            picture={picture}
            align={index === 0 ? "start" : "end"}
          />
        ))}
        {picture.short ? (
          <text className="s" x={(left + right) / 2} y={textSize}>
            shorted
          </text>
        ) : null}
        <Length picture={picture} />
      </svg>
    </div>
  );
}

function Controller({ picture }: Pick<PictureProps, "picture">) {
  const { controller, lineY, textSize } = picture;
  return (
    <>
      <rect className="fillp" x={controller.x} y={lineY - 17} width={controller.width} height={34} />
      <text className="c" x={controller.x + controller.width / 2} y={lineY + textSize * 0.36}>
        controller
      </text>
    </>
  );
}

function Panels({ picture }: Pick<PictureProps, "picture">) {
  const { panels, lineY, textSize, breakX, leftOut } = picture;
  const named = (index: number): boolean => index === 0 || index === panels.length - 1;
  return (
    <>
      {panels.map((panel, index) => (
        <g key={panel.number}>
          <rect className="fillp" x={panel.x} y={lineY - 13} width={16} height={26} />
          <circle className="fill" cx={panel.x + 8} cy={lineY} r={2} />
          {named(index) ? (
            <text className="c q" x={panel.x + 8} y={lineY - 19}>
              {`${index === 0 ? "panel " : ""}${panel.number}`}
            </text>
          ) : null}
        </g>
      ))}
      {breakX === null ? null : (
        <text className="c q" x={breakX + 12} y={lineY + 20 + textSize}>
          {`${leftOut} more`}
        </text>
      )}
    </>
  );
}

interface TerminatorProps extends Pick<PictureProps, "picture"> {
  readonly terminator: BusLinePicture["terminators"][number];
  readonly align: "start" | "end";
}

/** There: a resistor in ink. Missing: only its place, dashed in red pencil. Unknown: its place, dashed. */
function Terminator({ terminator, picture, align }: TerminatorProps) {
  const { lineY, textSize } = picture;
  const { x, state, words } = terminator;
  const pen = { there: "", missing: "pencil dashed", unknown: "edge dashed" }[state];
  const wordX = align === "start" ? Math.max(2, x - 18) : x + 18;
  return (
    <>
      <path className={state === "there" ? "" : pen} d={`M${x} ${lineY}V${lineY + 14}`} />
      <rect className={`fillp ${pen}`} x={x - 6} y={lineY + 14} width={12} height={26} />
      <path d={`M${x} ${lineY + 40}v8m-7 0h14`} className={state === "there" ? "" : pen} />
      <text
        className={`${state === "missing" ? "s" : "q"}${align === "end" ? " e" : ""}`}
        x={wordX}
        y={lineY + 48 + textSize * 1.4}
      >
        {words}
      </text>
    </>
  );
}

function Length({ picture }: Pick<PictureProps, "picture">) {
  const { lengthWords, left, right, textSize } = picture;
  if (lengthWords === null) return null;
  const y = textSize * 1.5;
  return (
    <>
      <path className="thin" d={`M${left} ${y}H${right}`} />
      <path d={`${tickPath(left, y)}${tickPath(right, y)}`} />
      <text className="c halo" x={(left + right) / 2} y={y + textSize * 0.36}>
        {lengthWords}
      </text>
    </>
  );
}
