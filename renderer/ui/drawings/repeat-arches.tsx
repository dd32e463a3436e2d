import type { KeyboardEvent } from "react";
import { tickPath } from "#shared-lib/drawings/drawing-paths.ts";
import type { ArchesInput, ArchesLayout } from "#shared-lib/drawings/repeat-arches.ts";
import { archesLayout, archRowSentence } from "#shared-lib/drawings/repeat-arches.ts";
import { fitLettering } from "#shared-lib/drawings/text-width.ts";
import { MeasuredDrawing } from "./measured-drawing.tsx";
import { unread } from "./unread.ts";

interface ArchesProps extends ArchesInput {
  readonly label: string;
  readonly onChoose?: (id: string) => void;
}

/** Repeats: arches between ticks on each lift's line of time, the number of callouts at the right. */
export function RepeatArches(props: ArchesProps) {
  return (
    <MeasuredDrawing>
      {(size) => (
        <ArchesPicture
          label={props.label}
          onChoose={props.onChoose}
          layout={archesLayout(props, size.width, size.textSize)}
        />
      )}
    </MeasuredDrawing>
  );
}

interface PictureProps {
  readonly layout: ArchesLayout;
  readonly label: string;
  readonly onChoose?: ((id: string) => void) | undefined;
}

export function ArchesPicture({ layout, label, onChoose }: PictureProps) {
  const { width, height, ticks, top, textSize } = layout;
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
        <g {...unread}>
          {ticks.map((tick) => (
            <g key={tick.x}>
              <path className="thin hair" d={`M${tick.x} ${top - 2}V${height - 4}`} />
              <text className="q" x={tick.x + 3} y={textSize * 0.9}>
                {tick.words}
              </text>
            </g>
          ))}
        </g>
        {layout.rows.map((row) => (
          <Row key={row.row.id} row={row} layout={layout} onChoose={onChoose} />
        ))}
      </svg>
    </div>
  );
}

interface RowProps extends Omit<PictureProps, "label"> {
  readonly row: ArchesLayout["rows"][number];
}

function Row({ row, layout, onChoose }: RowProps) {
  const { textSize, lineLeft, lineRight } = layout;
  const pen = row.row.standsOut ? "pencil" : "";
  const choose = () => onChoose?.(row.row.id);
  const onKeyDown = (event: KeyboardEvent) => {
    if (event.key !== "Enter" && event.key !== " ") return;
    event.preventDefault();
    choose();
  };
  const press = onChoose ? { role: "button", tabIndex: 0, onClick: choose, onKeyDown } : { role: "img" };
  const ground = { x: 0, y: row.top, width: layout.width, height: row.height };
  return (
    <g className={onChoose ? "press" : ""} aria-label={archRowSentence(row.row)} {...press}>
      <rect className="row-ground" {...ground} />
      {onChoose ? <rect className="hit" {...ground} /> : null}
      <g {...unread}>
        <text className={row.row.standsOut ? "b" : ""} x={0} y={row.y - textSize * 0.75}>
          {fitLettering(row.row.title, textSize, lineLeft - 8, row.row.standsOut)}
        </text>
        <text className="q" x={0} y={row.y + textSize * 0.4}>
          {fitLettering(row.row.note, textSize, lineLeft - 8)}
        </text>
        <path className="thin edge" d={`M${lineLeft} ${row.y}H${lineRight}`} />
        {row.arches.map((arch) => (
          <path key={arch} className={row.row.standsOut ? "heavy pencil" : ""} d={arch} />
        ))}
        {row.ticks.map((x) => (
          <path key={x} className={`heavy ${pen}`} d={tickPath(x, row.y)} />
        ))}
        <text
          className={row.row.standsOut ? "e s large" : "e large"}
          x={layout.width - 4}
          y={row.y + textSize * 0.4}
        >
          {row.row.times.length}
        </text>
      </g>
    </g>
  );
}
