import { type KeyboardEvent, useId } from "react";
import { fitLettering } from "#shared-lib/drawings/text-width.ts";
import { HatchPatterns, hatchesOf } from "../../ui/drawings/hatch-patterns.tsx";
import { MeasuredDrawing } from "../../ui/drawings/measured-drawing.tsx";
import { unread } from "../../ui/drawings/unread.ts";
import { barSentence, type GroupBar, type GroupBarsLayout, groupBarsLayout } from "./group-bars-layout.ts";

interface GroupBarsProps {
  readonly label: string;
  readonly bars: readonly GroupBar[];
  readonly onChoose: (id: string) => void;
}

/** Callouts per fault group: ink for this time, hatched for the year before. */
export function GroupBars({ label, bars, onChoose }: GroupBarsProps) {
  return (
    <MeasuredDrawing>
      {({ width, textSize }) => (
        <BarsPicture label={label} onChoose={onChoose} layout={groupBarsLayout(bars, width, textSize)} />
      )}
    </MeasuredDrawing>
  );
}

interface PictureProps {
  readonly label: string;
  readonly layout: GroupBarsLayout;
  readonly onChoose: (id: string) => void;
}

function BarsPicture({ label, layout, onChoose }: PictureProps) {
  const id = useId();
  const { width, height, left, top, textSize } = layout;
  return (
    <div className="drawing-frame">
      {/* biome-ignore lint/a11y/useSemanticElements: an SVG cannot be a fieldset; its rows are pressed one by one. */}
      <svg
        className="d"
        width={width}
        height={height}
        viewBox={`0 0 ${width} ${height}`}
        role="group"
        aria-label={label}
      >
        <HatchPatterns id={id} />
        <g {...unread}>
          {layout.ticks.map((tick) => (
            <g key={tick.words}>
              <path className="thin hair" d={`M${tick.x} ${top - 2}V${height - 4}`} />
              <text className="c q" x={tick.x} y={textSize}>
                {tick.words}
              </text>
            </g>
          ))}
        </g>
        {layout.rows.map((row) => (
          <Row key={row.bar.id} row={row} layout={layout} hatch={hatchesOf(id).cut} onChoose={onChoose} />
        ))}
        <path className="thin" d={`M${left} ${top - 2}V${height - 4}`} />
      </svg>
    </div>
  );
}

interface RowProps {
  readonly row: GroupBarsLayout["rows"][number];
  readonly layout: GroupBarsLayout;
  readonly hatch: string;
  readonly onChoose: (id: string) => void;
}

function Row({ row, layout, hatch, onChoose }: RowProps) {
  const { bar, top, height, now, before, nowWords, beforeWords } = row;
  const { left, barHeight, textSize, width } = layout;
  const canOpen = bar.count > 0;
  const onKeyDown = (event: KeyboardEvent) => {
    if (event.key !== "Enter" && event.key !== " ") return;
    event.preventDefault();
    onChoose(bar.id);
  };
  const press = canOpen
    ? { role: "button", tabIndex: 0, onClick: () => onChoose(bar.id), onKeyDown }
    : { role: "img" };
  const ground = { x: 0, y: top, width, height };
  return (
    <g className={canOpen ? "press" : ""} aria-label={barSentence(bar)} {...press}>
      <rect className="row-ground" {...ground} />
      {canOpen && <rect className="hit" {...ground} />}
      <g {...unread}>
        <text x={0} y={top + height / 2 + textSize * 0.36}>
          {fitLettering(bar.title, textSize, left - 10)}
        </text>
        <rect className="fill" x={left} y={nowWords.y - barHeight} width={now} height={barHeight} />
        <text className="b" x={nowWords.x} y={nowWords.y}>
          {bar.count}
        </text>
        {before !== null && (
          <>
            <rect
              className="thin"
              x={left}
              y={beforeWords.y - barHeight}
              width={before}
              height={barHeight}
              fill={hatch}
            />
            <text className="q" x={beforeWords.x} y={beforeWords.y}>
              {bar.yearBefore}
            </text>
          </>
        )}
      </g>
    </g>
  );
}
