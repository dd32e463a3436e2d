import { boxCentre } from "#shared-lib/drawings/drawing-paths.ts";
import type { ShaftLayout } from "#shared-lib/drawings/shaft-layout.ts";
import type { LandingState, ShaftSectionLift, ShaftSwitch } from "#shared-lib/drawings/shaft-section.ts";
import type { Entrance } from "#shared-lib/drawings/shaft-walls.ts";
import { landingPanelBox } from "#shared-lib/drawings/shaft-walls.ts";
import { unread } from "./unread.ts";

interface SignalsProps {
  readonly layout: ShaftLayout;
  readonly lift: ShaftSectionLift;
  readonly states: Readonly<Record<string, LandingState>>;
  readonly actuated: readonly ShaftSwitch[];
}

/** Guide rail with the zone magnets to scale (hollow unchecked, filled passed), and the terminal switches. */
export function ShaftSignals(props: SignalsProps) {
  const { layout } = props;
  const { heights } = layout;
  return (
    <g {...unread}>
      <path className="thin edge" d={railPath(layout)} />
      {heights.landings.map((landing) => (
        <ZoneMagnet
          key={landing.id}
          layout={layout}
          length={props.lift.magnetLengthMetres}
          level={landing.levelMetres}
          error={landing.magnetErrorMetres ?? 0}
          state={props.states[landing.id]?.zoneSignals ?? "unchecked"}
        />
      ))}
      <Switches {...props} />
      <Panels {...props} />
    </g>
  );
}

/** The rail stops at the break lines: what stands between them is not drawn. */
function railPath({ columns, heights }: ShaftLayout): string {
  const gaps = [...heights.breaks].sort((a, b) => a.toY - b.toY);
  const stops = [
    heights.roofY + 5,
    ...gaps.flatMap((gap) => [gap.toY + 2, gap.fromY - 2]),
    heights.pitFloorY - 1.5,
  ];
  return stops.map((y, index) => (index % 2 === 0 ? `M${columns.rail} ${y}` : `V${y}`)).join("");
}

interface MagnetProps {
  readonly layout: ShaftLayout;
  readonly length: number | null;
  readonly level: number;
  readonly error: number;
  readonly state: LandingState["zoneSignals"];
}

function ZoneMagnet({ layout, length, level, error, state }: MagnetProps) {
  const { columns, heights } = layout;
  const y = heights.yOf(level + error);
  const arm = <path className="thin" d={`M${columns.rail} ${y}H${columns.magnet}`} />;
  if (length === null) {
    // No default length exists: the place is shown, a body is not.
    return (
      <>
        {arm}
        <path className="thin" d={`M${columns.magnet} ${y - 4}V${y + 4}`} />
      </>
    );
  }
  const height = Math.max(2, length * heights.pixelsPerMetre);
  return (
    <>
      {arm}
      <rect
        className={state === "unchecked" ? "fillw" : "filled"}
        strokeWidth={1}
        x={columns.magnet}
        y={y - height / 2}
        width={5}
        height={height}
      />
    </>
  );
}

/** A terminal switch: base on the wall, lever with roller; the roller fills while the car actuates it. */
function Switches({ layout, actuated }: SignalsProps) {
  const { columns } = layout;
  const base = columns.hasRear ? columns.rail - 7 : columns.wellLeft;
  return layout.switches.map((entry) => (
    <g key={entry.switch}>
      <path d={`M${base} ${entry.y}H${columns.rail - 1}L${columns.rail + 6} ${entry.y - 4}`} />
      <circle
        className={actuated.includes(entry.switch) ? "filled" : "fillw"}
        cx={columns.rail}
        cy={entry.y}
        r={2}
      />
    </g>
  ));
}

function Panels({ layout, lift, states }: SignalsProps) {
  const { columns, heights } = layout;
  const fronts = layout.walls.entrances.filter((entrance) => entrance.side === "front");
  return (
    <>
      {lift.panelBus && fronts.length > 0 ? <PanelBus layout={layout} lift={lift} /> : null}
      {layout.walls.entrances.map((entrance) => {
        const state = states[entrance.landingId]?.landingPanel ?? "unchecked";
        return (
          <rect
            key={`${entrance.side} ${entrance.landingId}`}
            className={state === "unchecked" ? "fillw" : "filled"}
            {...landingPanelBox(columns, entrance, heights.pixelsPerMetre)}
          />
        );
      })}
    </>
  );
}

/** One line through the front panels down the landings, ending in its terminator where that is recorded. */
function PanelBus({ layout, lift }: { readonly layout: ShaftLayout; readonly lift: ShaftSectionLift }) {
  const x = layout.columns.panel + 2.5;
  const fronts = layout.walls.entrances.filter((entrance) => entrance.side === "front");
  const boxOf = (entrance: Entrance) =>
    landingPanelBox(layout.columns, entrance, layout.heights.pixelsPerMetre);
  const middles = fronts.map((entrance) => boxCentre(boxOf(entrance)).y);
  const end = fronts.find((entrance) => entrance.landingId === lift.panelBus?.terminatorLandingId);
  const endBox = end ? boxOf(end) : null;
  const endY = endBox ? endBox.y + endBox.height + 5 : null;
  return (
    <>
      <path className="thin edge" d={`M${x} ${Math.min(...middles)}V${Math.max(...middles)}`} />
      {endY === null ? null : (
        <>
          <path className="thin" d={`M${x} ${endY - 5}V${endY}`} />
          <path className="heavy" d={`M${x - 4} ${endY}H${x + 4}`} />
        </>
      )}
    </>
  );
}
