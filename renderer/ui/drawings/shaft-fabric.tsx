import { breakLinePath, tickPath } from "#shared-lib/drawings/drawing-paths.ts";
import type { ShaftLayout } from "#shared-lib/drawings/shaft-layout.ts";
import type { ShaftSectionLift } from "#shared-lib/drawings/shaft-section.ts";
import type { Hatches } from "./hatch-patterns.tsx";
import { unread } from "./unread.ts";

interface FabricProps {
  readonly layout: ShaftLayout;
  readonly lift: ShaftSectionLift;
  readonly hatches: Hatches;
}

/** What is cut: walls, roof, pit floor, slabs with their sills, and the entrances in the walls. */
export function ShaftFabric({ layout, lift, hatches }: FabricProps) {
  const { walls, columns, heights } = layout;
  const left = columns.wellLeft;
  const right = columns.wellRight;
  const roof = lift.headroomMetres !== null;
  const floor = lift.pitDepthMetres !== null;
  return (
    <g {...unread}>
      {walls.hatched.map((box) => {
        const open = (box.y < heights.roofY && !roof) || (box.y >= heights.pitFloorY && !floor);
        return open ? null : <rect key={`${box.x} ${box.y}`} {...box} fill={hatches.cut} className="bare" />;
      })}
      {walls.faces.map((face) => (
        <path key={`${face.x} ${face.top}`} d={`M${face.x} ${face.top}V${face.bottom}`} />
      ))}
      {walls.rearIsWall ? (
        <path className="cut" d={`M${left} ${heights.roofY}V${heights.pitFloorY}`} />
      ) : null}
      {roof ? (
        <path className="cut" d={`M${left - 1.5} ${heights.roofY}H${right}`} />
      ) : (
        <path className="thin" d={breakLinePath(left - 14, right + 14, heights.roofY)} />
      )}
      {floor ? (
        <path className="cut" d={`M${left - 1.5} ${heights.pitFloorY}H${right}`} />
      ) : (
        <path className="thin" d={breakLinePath(left - 14, right + 14, heights.pitFloorY)} />
      )}
      <Entrances layout={layout} />
    </g>
  );
}

/** Door leaf (seen), sill (cut, heavy) and landing panel at every entrance. */
function Entrances({ layout }: { readonly layout: ShaftLayout }) {
  const { columns, walls } = layout;
  return walls.entrances.map((entrance) => {
    const front = entrance.side === "front";
    const leaf = front ? columns.wellRight + 7 : columns.wellLeft - 7;
    const sillFrom = front ? columns.wellRight - 3 : columns.rearSillEnd;
    const sillTo = front ? columns.sillEnd : columns.wellLeft + 3;
    return (
      <g key={`${entrance.side} ${entrance.landingId}`}>
        <path d={`M${leaf} ${entrance.sillY - 2}V${entrance.lintelY}`} />
        <path className="cut" d={`M${sillFrom} ${entrance.sillY}H${sillTo}`} />
      </g>
    );
  });
}

/** Levels on one dimension line with oblique ticks, and the names of switches on their leaders. */
export function ShaftLevels({
  layout,
  lift,
}: {
  readonly layout: ShaftLayout;
  readonly lift: ShaftSectionLift;
}) {
  const { columns, labels, heights } = layout;
  const line = columns.dimensionLine;
  const levels = labels.filter((label) => label.kind === "level");
  const top = Math.min(...levels.map((label) => label.anchorY), heights.pitFloorY);
  const measured = lift.pitDepthMetres !== null;
  const bottom = measured ? heights.pitFloorY : Math.max(...levels.map((label) => label.anchorY), top);
  const wallEdge = columns.wellLeft - columns.wallThickness - (columns.hasRear ? 24 : 0);
  const middle = columns.textSize * 0.36;
  return (
    <g {...unread}>
      {levels.length > 0 ? <path className="thin" d={`M${line} ${top}V${bottom}`} /> : null}
      {labels.map((label) => {
        if (label.kind === "pit" && !measured) return null;
        const key = `${label.kind} ${label.text} ${label.anchorY} ${label.landingId ?? ""}`;
        const aside = Math.abs(label.y - label.anchorY) > 1.5;
        return (
          <g key={key}>
            {label.kind === "switch" ? (
              <path
                className="thin edge"
                d={`M${wallEdge - 2} ${label.anchorY}L${line - 2} ${label.y}H${columns.labelEnd + 3}`}
              />
            ) : (
              <>
                <path d={tickPath(line, label.anchorY)} />
                <path className="thin edge" d={`M${line + 6} ${label.anchorY}H${wallEdge - 2}`} />
                {aside ? (
                  <path
                    className="thin edge"
                    d={`M${line - 5} ${label.anchorY}L${columns.labelEnd + 2} ${label.y}`}
                  />
                ) : null}
              </>
            )}
            <text className={label.kind === "switch" ? "e q" : "e"} x={columns.labelEnd} y={label.y + middle}>
              {label.text}
            </text>
          </g>
        );
      })}
    </g>
  );
}

/** Where a blind run is cut: paper over everything that passes, two break lines, and the run's true length. */
export function ShaftBreaks({ layout }: { readonly layout: ShaftLayout }) {
  const { columns, heights } = layout;
  const left = columns.dimensionLine - 8;
  const right = columns.wellRight + columns.wallThickness + 8;
  return heights.breaks.map((cut) => {
    const y = (cut.fromY + cut.toY) / 2;
    return (
      <g key={cut.fromLevel} {...unread}>
        <rect
          className="blank"
          x={left}
          y={cut.toY + 3}
          width={right - left}
          height={cut.fromY - cut.toY - 6}
        />
        <path className="thin" d={breakLinePath(left, right, cut.toY + 3)} />
        <path className="thin" d={breakLinePath(left, right, cut.fromY - 3)} />
        <text className="q" x={columns.marking} y={y + columns.textSize * 0.36}>
          {`${cut.runMetres.toFixed(2)}\u00a0m without landings`}
        </text>
      </g>
    );
  });
}

export function ShaftScaleBar({ layout }: { readonly layout: ShaftLayout }) {
  const { from, to, y, metres } = layout.scaleBar;
  const parts = metres === 1 || metres === 2 ? 2 : 5;
  const inner = Array.from({ length: parts - 1 }, (_, index) => from + ((to - from) * (index + 1)) / parts);
  return (
    <g {...unread}>
      <path className="thin" d={`M${from} ${y}H${to}`} />
      <path d={tickPath(from, y)} />
      <path d={tickPath(to, y)} />
      <path className="thin" d={inner.map((x) => `M${x} ${y - 3}v6`).join("")} />
      <text className="q" x={to + 12} y={y + layout.columns.textSize * 0.36}>
        {`${metres}\u00a0m, heights to scale`}
      </text>
    </g>
  );
}
