import { useId } from "react";
import { tickPath } from "#shared-lib/drawings/drawing-paths.ts";
import type { SignalPanel, SignalPanelLayout, TimeSignalsLayout } from "#shared-lib/drawings/time-signals.ts";
import { signalPanelSentence, timeSignalsLayout } from "#shared-lib/drawings/time-signals.ts";
import { HatchPatterns, hatchesOf } from "./hatch-patterns.tsx";
import { MeasuredDrawing } from "./measured-drawing.tsx";

/** Signals over time: expected on the left, seen on the right, never overlaid. */
export function TimeSignals(props: { readonly expected: SignalPanel; readonly seen: SignalPanel | null }) {
  const panels = props.seen ? [props.expected, props.seen] : [props.expected];
  return (
    <MeasuredDrawing>
      {(size) => <SignalsPicture layout={timeSignalsLayout(panels, size.width, size.textSize)} />}
    </MeasuredDrawing>
  );
}

export function SignalsPicture({ layout }: { readonly layout: TimeSignalsLayout }) {
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
        aria-label={layout.panels.map((panel) => signalPanelSentence(panel.panel)).join(" ")}
      >
        <HatchPatterns id={id} />
        {layout.panels.map((panel) => (
          <Panel
            key={panel.panel.title}
            panel={panel}
            textSize={layout.textSize}
            hatch={hatchesOf(id).soft}
          />
        ))}
      </svg>
    </div>
  );
}

interface PanelProps {
  readonly panel: SignalPanelLayout;
  readonly textSize: number;
  readonly hatch: string;
}

function Panel({ panel, textSize, hatch }: PanelProps) {
  const lastInterval = Math.max(panel.rowsBottom, ...panel.intervals.map((interval) => interval.y + 4));
  return (
    <>
      <text className="b" x={panel.plotLeft} y={panel.top + textSize}>
        {panel.panel.title}
      </text>
      {panel.moments.map((x) => (
        <path key={x} className="thin" d={`M${x} ${panel.rowsTop}V${lastInterval}`} />
      ))}
      {panel.rows.map((row) => (
        <g key={row.name}>
          {row.unknown.map((box) => (
            <rect key={box.x} className="edge thin" {...box} fill={hatch} />
          ))}
          {row.path === "" ? null : <path className="limit" d={row.path} />}
          {panel.showsNames ? <Name row={row} x={panel.left} textSize={textSize} /> : null}
        </g>
      ))}
      {panel.intervals.map((interval) => (
        <g key={`${interval.from} ${interval.to}`}>
          <path className="thin" d={`M${interval.from} ${interval.y}H${interval.to}`} />
          <path d={`${tickPath(interval.from, interval.y)}${tickPath(interval.to, interval.y)}`} />
          <text className="c halo" x={interval.wordX} y={interval.y + textSize * 0.36}>
            {interval.words}
          </text>
        </g>
      ))}
      <TimeAxis panel={panel} textSize={textSize} />
    </>
  );
}

interface NameProps {
  readonly row: SignalPanelLayout["rows"][number];
  readonly x: number;
  readonly textSize: number;
}

function Name({ row, x, textSize }: NameProps) {
  const shift = row.activeLow ? -0.25 : 0.36;
  return (
    <>
      <text x={x} y={row.middleY + textSize * shift}>
        {row.name}
      </text>
      {row.activeLow ? (
        <text className="q" x={x} y={row.middleY + textSize * 0.95}>
          active low
        </text>
      ) : null}
    </>
  );
}

function TimeAxis({ panel, textSize }: Omit<PanelProps, "hatch">) {
  return (
    <>
      <path className="thin edge" d={`M${panel.plotLeft} ${panel.axisY}H${panel.plotRight}`} />
      {panel.ticks.map((tick) => (
        <g key={tick.x}>
          <path className="thin edge" d={`M${tick.x} ${panel.axisY}v5`} />
          <text className="q c" x={tick.x} y={panel.axisY + textSize * 1.4}>
            {tick.words}
          </text>
        </g>
      ))}
    </>
  );
}
