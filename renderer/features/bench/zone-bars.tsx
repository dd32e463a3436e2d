import type { UnitSystem } from "#shared-lib/quantities.ts";
import { MeasuredDrawing } from "../../ui/drawings/measured-drawing.tsx";
import { type BarsPicture, barsPicture, barsSentence, barWidth } from "./bars-picture.ts";
import type { ZoneBarsDrawing } from "./zone-pictures.ts";

interface ZoneBarsProps {
  readonly drawing: ZoneBarsDrawing;
  readonly system: UnitSystem;
}

/** Car positions at which each signal is on, where the well cannot be drawn beside them. */
export function ZoneBars({ drawing, system }: ZoneBarsProps) {
  return (
    <MeasuredDrawing>
      {(size) => (
        <Picture
          picture={barsPicture(drawing, size.width, size.textSize, system)}
          label={barsSentence(drawing, system)}
        />
      )}
    </MeasuredDrawing>
  );
}

function Picture({ picture, label }: { readonly picture: BarsPicture; readonly label: string }) {
  const { width, height, left, right, textSize, bars, lines } = picture;
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
        <text className="q" x={left} y={textSize}>
          {`Car positions, ${picture.sign}, up positive`}
        </text>
        {bars.map((bar) => (
          <Bar key={bar.name} bar={bar} picture={picture} />
        ))}
        {lines.map((line) => (
          <g key={`${line.kind} ${line.words}`}>
            <path
              className={`${{ level: "thin chain", limit: "limit", centre: "heavy edge" }[line.kind]} ${line.outside ? "pencil" : ""}`}
              d={`M${left} ${line.y}H${right}`}
            />
            <path className="thin edge" d={`M${right} ${line.y}L${right + 10} ${line.wordY}`} />
            <text className={line.outside ? "s" : ""} x={right + 14} y={line.wordY + textSize * 0.36}>
              {line.words}
            </text>
          </g>
        ))}
      </svg>
    </div>
  );
}

interface BarProps {
  readonly bar: BarsPicture["bars"][number];
  readonly picture: BarsPicture;
}

function Bar({ bar, picture }: BarProps) {
  const { textSize, height } = picture;
  const x = bar.x + barWidth / 2;
  const beside = bar.x + barWidth + 6;
  return (
    <>
      <rect
        className={bar.unlocks ? "filled" : "fillp"}
        x={bar.x}
        y={bar.top}
        width={barWidth}
        height={Math.max(0, bar.bottom - bar.top)}
      />
      <text
        className={bar.topBeside ? "halo" : "c halo"}
        x={bar.topBeside ? beside : x}
        y={bar.topBeside ? bar.top + textSize * 1.2 : bar.top - 5}
      >
        {bar.topWords}
      </text>
      <text
        className={bar.bottomBeside ? "halo" : "c halo"}
        x={bar.bottomBeside ? beside : x}
        y={bar.bottomBeside ? bar.bottom - textSize * 0.5 : bar.bottom + textSize}
      >
        {bar.bottomWords}
      </text>
      <text className="c b" x={x} y={height - textSize * 1.75}>
        {bar.name}
      </text>
      <text className="c q" x={x} y={height - textSize * 0.5}>
        {bar.lengthWords}
      </text>
    </>
  );
}
