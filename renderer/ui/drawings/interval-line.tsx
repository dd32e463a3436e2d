import "./drawings.css";
import { tickPath } from "#shared-lib/drawings/drawing-paths.ts";
import type { IntervalInput } from "#shared-lib/drawings/interval-line.ts";
import { intervalLayout } from "#shared-lib/drawings/interval-line.ts";

interface IntervalProps extends IntervalInput {
  readonly width: number;
  readonly height?: number;
  /** Says the interval in words: "between 9 and 23, likely 17, counted 21". */
  readonly label: string;
  /** Red pencil: only where the row is what the title names. */
  readonly standsOut?: boolean;
  /** Pixels that the mean's thin line runs over the rows above and below, so that it is one line through a table. */
  readonly overrun?: number;
}

/** A dimension line with ticks, heavy bar at the estimate, small circle at what was counted. */
export function IntervalLine(props: IntervalProps) {
  const { width, height = 26, overrun = 12 } = props;
  const layout = intervalLayout(props, width, height);
  const pen = props.standsOut ? "pencil" : "";
  return (
    <svg
      className="d"
      width={width}
      height={height}
      viewBox={`0 0 ${width} ${height}`}
      role="img"
      aria-label={props.label}
    >
      {layout.mean === null ? null : (
        <path className="thin edge" d={`M${layout.mean} ${-overrun}V${height + overrun}`} />
      )}
      <path className={`thin ${pen}`} d={`M${layout.low} ${layout.y}H${layout.high}`} />
      <path className={pen} d={`${tickPath(layout.low, layout.y)}${tickPath(layout.high, layout.y)}`} />
      <path className={`bar ${pen}`} d={`M${layout.estimate} ${layout.y - 7}v14`} />
      {layout.counted === null ? null : <circle className="edge" cx={layout.counted} cy={layout.y} r={4} />}
    </svg>
  );
}
