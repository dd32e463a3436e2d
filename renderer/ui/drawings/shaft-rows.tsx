import type { KeyboardEvent } from "react";
import { useRef, useState } from "react";
import { headWords, stateMarkSize, stateWordOffset } from "#shared-lib/drawings/shaft-columns.ts";
import type { LandingRow, ShaftLayout } from "#shared-lib/drawings/shaft-layout.ts";
import type { CheckState, LandingState, ShaftChoice } from "#shared-lib/drawings/shaft-section.ts";
import { writtenLevel } from "#shared-lib/drawings/shaft-section.ts";
import { fitLettering } from "#shared-lib/drawings/text-width.ts";
import { StateMark } from "./state-mark.tsx";
import { unread } from "./unread.ts";

interface RowsProps {
  readonly layout: ShaftLayout;
  readonly states: Readonly<Record<string, LandingState>>;
  readonly chosenLandingId?: string | undefined;
  readonly onChoose?: ((choice: ShaftChoice) => void) | undefined;
}

export function ShaftRowHeads({ layout }: { readonly layout: ShaftLayout }) {
  const { columns, headBaseline } = layout;
  return (
    <g {...unread}>
      <text className="q" x={columns.marking} y={headBaseline}>
        {headWords.landing}
      </text>
      <text className="q" x={columns.zoneSignals} y={headBaseline}>
        {headWords.zoneSignals}
      </text>
      <text className="q" x={columns.landingPanel} y={headBaseline}>
        {headWords.landingPanel}
      </text>
    </g>
  );
}

/** The table beside the section, its rows on the sill lines. One tab stop; arrow keys go from landing to landing. */
export function ShaftRows(props: RowsProps) {
  const { layout } = props;
  const [current, setCurrent] = useState(Math.max(0, layout.rows.length - 1));
  const group = useRef<SVGGElement>(null);
  const goTo = (index: number) => {
    const next = Math.min(layout.rows.length - 1, Math.max(0, index));
    setCurrent(next);
    const id = layout.rows[next]?.landing.id;
    for (const element of group.current?.children ?? []) {
      if (element instanceof SVGElement && element.dataset.landing === id) element.focus();
    }
  };
  const stop = Math.min(current, layout.rows.length - 1);
  return (
    <g ref={group}>
      {layout.rows.map((row, index) => (
        <Row
          key={row.landing.id}
          {...props}
          row={row}
          isStop={index === stop}
          onStep={(step) => goTo(index + step)}
        />
      ))}
    </g>
  );
}

interface RowProps extends RowsProps {
  readonly row: LandingRow;
  readonly isStop: boolean;
  readonly onStep: (step: number) => void;
}

function Row(props: RowProps) {
  const { row, layout, states, onChoose } = props;
  const { columns } = layout;
  const state = states[row.landing.id] ?? { zoneSignals: "unchecked", landingPanel: "unchecked" };
  const ground = {
    x: columns.marking - 6,
    y: row.baseY - row.height,
    width: columns.right - columns.marking + 8,
    height: row.height,
  };
  const chosen = props.chosenLandingId === row.landing.id;
  const choose = () => onChoose?.({ kind: "landing", landingId: row.landing.id });
  const onKeyDown = (event: KeyboardEvent) => {
    if (event.key === "Enter" || event.key === " ") choose();
    else if (event.key === "ArrowUp") props.onStep(1);
    else if (event.key === "ArrowDown") props.onStep(-1);
    else return;
    event.preventDefault();
  };
  const press = onChoose
    ? { role: "button", tabIndex: props.isStop ? 0 : -1, "aria-pressed": chosen, onClick: choose, onKeyDown }
    : { role: "img" };
  return (
    <g
      className={`${onChoose ? "press" : ""} ${chosen ? "chosen" : ""}`}
      data-landing={row.landing.id}
      aria-label={rowWords(row, state)}
      {...press}
    >
      <rect className="row-ground" {...ground} />
      {onChoose ? <rect className="hit" {...ground} /> : null}
      {chosen ? <path className="bar" d={`M${ground.x + 1} ${ground.y}V${row.baseY}`} /> : null}
      <RowLine row={row} layout={layout} />
      <RowWords row={row} layout={layout} state={state} />
    </g>
  );
}

function rowWords(row: LandingRow, state: LandingState): string {
  const { landing } = row;
  const name = landing.name === "" ? "" : `, ${landing.name}`;
  const sides = { front: "", rear: ", rear entrance", both: ", front and rear entrances" }[landing.entrances];
  return `Landing ${landing.marking}${name}, ${writtenLevel(landing.levelMetres)} m${sides}: zone signals ${state.zoneSignals}, landing panel ${state.landingPanel}`;
}

/** The sill's line drawn on under the row; with a bend where the row had to step aside. */
function RowLine({ row, layout }: { readonly row: LandingRow; readonly layout: ShaftLayout }) {
  const { columns } = layout;
  const rearOnly = row.landing.entrances === "rear";
  const from = rearOnly ? columns.wellRight + columns.wallThickness + 2 : columns.sillEnd;
  const bend = Math.abs(row.baseY - row.sillY) > 0.5 ? `L${columns.marking - 4} ${row.baseY}` : "";
  return (
    <path
      className="thin edge"
      d={`M${from} ${row.sillY}${bend === "" ? "" : `H${columns.sillEnd}`}${bend}H${columns.right}`}
    />
  );
}

interface WordsProps {
  readonly row: LandingRow;
  readonly layout: ShaftLayout;
  readonly state: LandingState;
}

function RowWords({ row, layout, state }: WordsProps) {
  const { columns } = layout;
  const base = row.baseY - Math.min(11, row.height * 0.24);
  return (
    <g {...unread}>
      <text className="b marking" x={columns.marking} y={base}>
        {row.landing.marking}
      </text>
      <text className="q" x={columns.name} y={base}>
        {columns.nameRoom > 0 ? fitLettering(row.landing.name, columns.textSize, columns.nameRoom) : null}
      </text>
      <StateWords state={state.zoneSignals} x={columns.zoneSignals} y={base} textSize={columns.textSize} />
      <StateWords state={state.landingPanel} x={columns.landingPanel} y={base} textSize={columns.textSize} />
    </g>
  );
}

const stateClass = { passed: "q", failed: "s", unchecked: "" } as const;

function StateWords(props: {
  readonly state: CheckState;
  readonly x: number;
  readonly y: number;
  readonly textSize: number;
}) {
  const size = stateMarkSize(props.textSize);
  return (
    <>
      <StateMark state={props.state} x={props.x} y={props.y - props.textSize * 0.36 - size / 2} size={size} />
      <text className={stateClass[props.state]} x={props.x + stateWordOffset(props.textSize)} y={props.y}>
        {props.state}
      </text>
    </>
  );
}
