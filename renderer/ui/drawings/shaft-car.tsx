import type { KeyboardEventHandler, PointerEventHandler, ReactNode } from "react";
import { breakLinePath, springPath } from "#shared-lib/drawings/drawing-paths.ts";
import type { ShaftLayout } from "#shared-lib/drawings/shaft-layout.ts";
import type { ShaftSectionLift, ZoneSensorStates } from "#shared-lib/drawings/shaft-section.ts";
import { carValueText, nearestLanding, sensorsAt, writtenLevel } from "#shared-lib/drawings/shaft-section.ts";
import type { RopeSpan } from "#shared-lib/drawings/shaft-suspension.ts";
import {
  apronAsDrawnMetres,
  carAsDrawnMetres,
  shaftSuspension,
} from "#shared-lib/drawings/shaft-suspension.ts";

import { letteringWidth } from "#shared-lib/drawings/text-width.ts";
import { unread } from "./unread.ts";

export interface CarControl {
  readonly range: { readonly lowest: number; readonly highest: number };
  readonly onPointerDown: PointerEventHandler<SVGGElement>;
  readonly onPointerMove: PointerEventHandler<SVGGElement>;
  readonly onPointerUp: PointerEventHandler<SVGGElement>;
  readonly onKeyDown: KeyboardEventHandler<SVGGElement>;
}

interface CarProps {
  readonly layout: ShaftLayout;
  readonly lift: ShaftSectionLift;
  readonly carLevel: number;
}

/** A vertical line between two heights that may move: stretched by a transform, so that it travels with the car. */
function Rope({ rope }: { readonly rope: RopeSpan }) {
  return (
    <line
      className="thin rope moves"
      x1={rope.x}
      x2={rope.x}
      y1={0}
      y2={1}
      style={{ transform: `translateY(${rope.fromY}px) scaleY(${rope.toY - rope.fromY})` }}
    />
  );
}

/** Ropes, sheave and counterweight, or cylinder and ram, as recorded. */
export function ShaftMachinery({ layout, lift, carLevel }: CarProps) {
  const parts = shaftSuspension(lift, layout.heights, layout.columns, carLevel);
  return (
    <g {...unread}>
      {parts.slabHoles.map((hole) => (
        <rect key={hole.x} className="blank" {...hole} />
      ))}
      {parts.machineBoxes.map((box) => (
        <rect key={box.x} className="fillp" {...box} />
      ))}
      {parts.ropes.map((rope) => (
        <Rope key={rope.id} rope={rope} />
      ))}
      {parts.overWheels ? <path className="thin" d={parts.overWheels} /> : null}
      {parts.machineLines ? <path d={parts.machineLines} /> : null}
      {parts.wheels.map((wheel, index) => (
        <g key={wheel.x}>
          <circle className="fillw" cx={wheel.x} cy={wheel.y} r={wheel.radius} />
          <circle className={index === 0 ? "" : "fill"} cx={wheel.x} cy={wheel.y} r={index === 0 ? 3 : 1.4} />
        </g>
      ))}
      {parts.ropeEnds.map((box) => (
        <rect key={box.x} className="fillw" {...box} />
      ))}
      <Hydraulics parts={parts} />
      {parts.buffers.map((buffer) => (
        <Buffer key={buffer.x} {...buffer} />
      ))}
    </g>
  );
}

function Buffer(props: { readonly x: number; readonly top: number; readonly bottom: number }) {
  return <path d={springPath(props.x, props.top, props.bottom)} />;
}

function Hydraulics({ parts }: { readonly parts: ReturnType<typeof shaftSuspension> }) {
  const { cylinder, ram } = parts;
  if (!cylinder) return null;
  const bottom = cylinder.y + cylinder.height;
  return (
    <>
      {ram ? (
        <rect
          className="fillp rope moves"
          x={ram.x}
          y={0}
          width={ram.width}
          height={1}
          style={{ transform: `translateY(${ram.fromY}px) scaleY(${ram.toY - ram.fromY})` }}
        />
      ) : null}
      <rect className="fillp" x={cylinder.x} y={cylinder.y} width={cylinder.width} height={cylinder.height} />
      <path className="cut" d={`M${cylinder.x - 2} ${cylinder.y}h${cylinder.width + 4}`} />
      {cylinder.throughFloor ? (
        <>
          <rect className="blank" x={cylinder.x - 3} y={bottom - 4} width={cylinder.width + 6} height={6} />
          <path
            className="thin"
            d={breakLinePath(cylinder.x - 8, cylinder.x + cylinder.width + 8, bottom - 4)}
          />
        </>
      ) : null}
    </>
  );
}

/** Bodies that travel over everything else: counterweight with its pulley, pulleys on car or ram. */
export function ShaftCounterweight({ layout, lift, carLevel }: CarProps) {
  const parts = shaftSuspension(lift, layout.heights, layout.columns, carLevel);
  const body = parts.counterweight;
  const { hasRear } = layout.columns;
  return (
    <g {...unread}>
      {body ? (
        <g className="moves" style={{ transform: `translateY(${body.y}px)` }}>
          <rect
            className={hasRear ? "fillp dashed" : "fillp"}
            x={body.x}
            y={0}
            width={body.width}
            height={body.height}
          />
          <path
            className="thin"
            d={`M${body.x} 0l${body.width} ${body.height}M${body.x + body.width} 0l${-body.width} ${body.height}`}
          />
        </g>
      ) : null}
      {parts.pulleys.map((pulley) => (
        <g key={pulley.id} className="moves" style={{ transform: `translateY(${pulley.y}px)` }}>
          <path d={`M${pulley.x} 0v${pulley.id === "car pulley" ? 8 : 6}`} />
          <circle className="fillw" cx={pulley.x} cy={0} r={pulley.radius} />
          <circle className="fill" cx={pulley.x} cy={0} r={1.4} />
        </g>
      ))}
    </g>
  );
}

/** The car in its own coordinates: sill at height 0. Sling, apron, door, sensors that fill while they are on. */
export function ShaftCar(
  props: CarProps & { readonly control: CarControl | null; readonly children?: ReactNode },
) {
  const { layout, lift, carLevel, control } = props;
  const y = layout.heights.yOf(carLevel);
  const slider = control
    ? {
        role: "slider",
        tabIndex: 0,
        "aria-label": "Car",
        "aria-orientation": "vertical" as const,
        "aria-valuemin": control.range.lowest,
        "aria-valuemax": control.range.highest,
        "aria-valuenow": carLevel,
        "aria-valuetext": carValueText(lift, carLevel),
        onPointerDown: control.onPointerDown,
        onPointerMove: control.onPointerMove,
        onPointerUp: control.onPointerUp,
        onPointerCancel: control.onPointerUp,
        onKeyDown: control.onKeyDown,
      }
    : { "aria-hidden": true };
  return (
    <g className="moves" style={{ transform: `translateY(${y}px)` }}>
      <g className="car" {...slider}>
        <CarBody layout={layout} lift={lift} carLevel={carLevel} />
      </g>
      {props.children}
    </g>
  );
}

function CarBody({ layout, lift, carLevel }: CarProps) {
  const { car, hasRear } = layout.columns;
  const scale = layout.heights.pixelsPerMetre;
  const top = -carAsDrawnMetres * scale;
  const apron = apronAsDrawnMetres * scale;
  const bracket = shaftSuspension(lift, layout.heights, layout.columns, carLevel).carBracket;
  return (
    <>
      <rect
        className="hit"
        x={car.left}
        y={Math.min(top, -44)}
        width={car.right - car.left}
        height={Math.max(-top, 44)}
      />
      <path
        d={`M${car.left + 4} ${top - 8}H${car.right - 4}M${car.left + 14} ${top - 8}V${top}M${car.right - 14} ${top - 8}V${top}`}
      />
      <rect className="fillp heavy" x={car.left} y={top} width={car.right - car.left} height={-top} />
      <path className="cut" d={`M${hasRear ? car.left - 7 : car.left - 2} 0H${car.right + 7}`} />
      <path d={`M${car.right + 5} 0V${apron}l-5 6`} />
      <path d={`M${car.right + 3} -2V${top + 3}`} />
      {hasRear ? <path d={`M${car.left - 5} 0V${apron}l5 6M${car.left - 3} -2V${top + 3}`} /> : null}
      {bracket ? <path d={`M${bracket.from - 3} ${bracket.y}H${bracket.to + 8}`} /> : null}
      <CarWords layout={layout} lift={lift} carLevel={carLevel} middle={top / 2} />
      <ZoneSensors layout={layout} lift={lift} states={sensorsAt(lift, carLevel)} />
    </>
  );
}

function CarWords({ layout, lift, carLevel, middle }: CarProps & { readonly middle: number }) {
  const { car, textSize, hasRear, magnet } = layout.columns;
  const near = nearestLanding(layout.heights.landings, carLevel);
  const atLanding = near && Math.round((near.levelMetres - carLevel) * 1000) === 0;
  const words = atLanding ? `car at ${near.marking}` : `car ${writtenLevel(carLevel)}`;
  const from = hasRear ? magnet + 20 : car.left;
  const room = car.right - from - 6;
  const shown = [words, atLanding ? near.marking : writtenLevel(carLevel)].find(
    (text) => letteringWidth(text, textSize) <= room,
  );
  if (!shown || lift.landings.length === 0) return null;
  return (
    <text className="c" x={(from + car.right) / 2} y={middle + textSize * 0.36}>
      {shown}
    </text>
  );
}

interface SensorProps {
  readonly layout: ShaftLayout;
  readonly lift: ShaftSectionLift;
  readonly states: ZoneSensorStates;
}

/** Two boxes on an arm of the car. Their true spacing is less than a pen's width here; a detail shows it to scale. */
function ZoneSensors({ layout, lift, states }: SensorProps) {
  const { magnet, car, hasRear } = layout.columns;
  const x = magnet + 9;
  if (lift.zoneSensors === null) return null;
  const half = Math.max(3.8, ((lift.sensorSpacingMetres ?? 0) / 2) * layout.heights.pixelsPerMetre);
  const boxes =
    lift.zoneSensors === 1
      ? [{ name: "zone", y: 0, state: states.upper }]
      : [
          { name: "upper", y: -half, state: states.upper },
          { name: "lower", y: half, state: states.lower },
        ];
  return (
    <>
      {boxes.map((box) => (
        <rect
          key={box.name}
          className={`${box.state === "on" ? "filled" : "fillp"} ${box.state === "unknown" ? "thin" : ""}`}
          data-sensor={box.name}
          data-state={box.state}
          strokeWidth={1.2}
          x={x}
          y={box.y - 2.2}
          width={5.5}
          height={4.4}
        />
      ))}
      {hasRear ? null : <path className="thin" d={`M${x + 5.5} 0H${car.left}`} />}
    </>
  );
}
