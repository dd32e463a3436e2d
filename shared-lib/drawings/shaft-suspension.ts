import type { Box, Point } from "./drawing-paths.ts";
import type { ShaftColumns } from "./shaft-columns.ts";
import type { ShaftHeights } from "./shaft-heights.ts";
import type { ShaftSectionLift } from "./shaft-section.ts";

export interface Wheel extends Point {
  readonly radius: number;
}

/** A vertical line whose ends may move with the car. */
export interface RopeSpan {
  readonly id: string;
  readonly x: number;
  readonly fromY: number;
  readonly toY: number;
}

/** Ropes, wheels and machine, or cylinder and ram, with the car at one level. Everything that moves is a number. */
export interface ShaftSuspension {
  /** What stands still: sheave, deflector. */
  readonly wheels: readonly Wheel[];
  /** What travels: pulleys on car, counterweight or ram head. */
  readonly pulleys: readonly (Wheel & { readonly id: string })[];
  readonly ropes: readonly RopeSpan[];
  /** The rope over the wheels, standing still. */
  readonly overWheels: string;
  readonly ropeEnds: readonly Box[];
  /** Holes for ropes in the roof slab, where the machine stands above it. */
  readonly slabHoles: readonly Box[];
  /** Bed frame, motor and gear. */
  readonly machineLines: string;
  readonly machineBoxes: readonly Box[];
  readonly counterweight: Box | null;
  readonly cylinder: (Box & { readonly throughFloor: boolean }) | null;
  readonly ram: {
    readonly x: number;
    readonly width: number;
    readonly fromY: number;
    readonly toY: number;
  } | null;
  /** Bracket between the lifting rope and the car floor, relative to the car's sill. */
  readonly carBracket: { readonly from: number; readonly to: number; readonly y: number } | null;
  readonly buffers: readonly { readonly x: number; readonly top: number; readonly bottom: number }[];
  readonly machineBox: Box;
}

/** Pixels above the roof that a machine room needs in the picture. */
export const machineAbove = 56;
/** Pixels below the pit floor that a cylinder in the ground needs. */
export const cylinderBelow = 30;

export const carAsDrawnMetres = 2.2;
export const apronAsDrawnMetres = 0.75;

const cwtPulley = 6;
const carPulley = 7;
const nothing = {
  wheels: [],
  pulleys: [],
  ropes: [],
  overWheels: "",
  ropeEnds: [],
  slabHoles: [],
  machineLines: "",
  machineBoxes: [],
  counterweight: null,
  cylinder: null,
  ram: null,
  carBracket: null,
} as const;

export function machineIsAbove(lift: ShaftSectionLift): boolean {
  return lift.driveKind === "geared traction" || lift.driveKind === "gearless traction";
}

export function shaftSuspension(
  lift: ShaftSectionLift,
  heights: ShaftHeights,
  columns: ShaftColumns,
  carLevel: number,
): ShaftSuspension {
  return lift.driveKind === "hydraulic"
    ? hydraulic(lift, heights, columns, carLevel)
    : traction(lift, heights, columns, carLevel);
}

function ends(heights: ShaftHeights): { lowest: number; highest: number } {
  const lowest = heights.landings[0]?.levelMetres ?? 0;
  return { lowest, highest: heights.landings.at(-1)?.levelMetres ?? lowest };
}

function bufferAt(heights: ShaftHeights, x: number) {
  const height = Math.min(26, Math.max(9, 0.55 * heights.pixelsPerMetre));
  return { x, top: heights.pitFloorY - height, bottom: heights.pitFloorY - 1 };
}

function traction(
  lift: ShaftSectionLift,
  heights: ShaftHeights,
  columns: ShaftColumns,
  carLevel: number,
): ShaftSuspension {
  const { lowest, highest } = ends(heights);
  const cwtX = (columns.counterweight.left + columns.counterweight.right) / 2;
  const bodyHeight = carAsDrawnMetres * heights.pixelsPerMetre;
  const carTop = heights.yOf(carLevel) - bodyHeight - 8;
  const cwtTop = heights.yOf(lowest + highest - carLevel) - bodyHeight;
  const twoToOne = lift.roping === "2:1";
  const left = twoToOne ? cwtX + cwtPulley : cwtX;
  const right = twoToOne ? columns.carRope - carPulley : columns.carRope;
  const above = machineIsAbove(lift);
  const head = sheaveAndDeflector(left, right, above ? heights.roofY - 32 : heights.roofY + 19, above);
  const { left: cwtLeft, right: cwtRight } = columns.counterweight;
  return {
    ...nothing,
    wheels: head.wheels,
    machineLines: machineLines(head.wheels, above, heights.roofY),
    machineBoxes: lift.driveKind === "geared traction" ? gearedMachine(head.wheels) : [],
    counterweight: { x: cwtLeft, y: cwtTop, width: cwtRight - cwtLeft, height: bodyHeight },
    buffers: [bufferAt(heights, columns.carRope), bufferAt(heights, cwtX)],
    machineBox: boxOfWheels(head.wheels),
    // What is not recorded is not drawn: without a roping there are no ropes in the picture.
    ...(lift.roping === null || lift.roping === "4:1"
      ? {}
      : {
          ...(twoToOne
            ? pulleyRopes(head, { cwtX, carX: columns.carRope, cwtTop, carTop, roofY: heights.roofY })
            : { ropes: straightRopes(head, left, right, cwtTop, carTop) }),
          overWheels: head.over,
          slabHoles: above
            ? [left, right].map((x) => ({ x: x - 3, y: heights.roofY - 11, width: 6, height: 12 }))
            : [],
        }),
  };
}

type Head = ReturnType<typeof sheaveAndDeflector>;

function straightRopes(head: Head, left: number, right: number, cwtEnd: number, carEnd: number): RopeSpan[] {
  return [
    { id: "counterweight rope", x: left, fromY: head.leftY, toY: cwtEnd },
    { id: "car rope", x: right, fromY: head.rightY, toY: carEnd },
  ];
}

interface PulleyPlaces {
  readonly cwtX: number;
  readonly carX: number;
  readonly cwtTop: number;
  readonly carTop: number;
  readonly roofY: number;
}

/** 2:1: the rope runs down, round a pulley on the body, and up to its end at the roof. */
function pulleyRopes(head: Head, { cwtX, carX, cwtTop, carTop, roofY }: PulleyPlaces) {
  const cwtEnd = cwtTop - 6;
  const carEnd = carTop - 2;
  const anchors = [cwtX - cwtPulley, carX + carPulley];
  return {
    ropes: [
      ...straightRopes(head, cwtX + cwtPulley, carX - carPulley, cwtEnd, carEnd),
      { id: "counterweight rope end", x: cwtX - cwtPulley, fromY: roofY + 10, toY: cwtEnd },
      { id: "car rope end", x: carX + carPulley, fromY: roofY + 10, toY: carEnd },
    ],
    ropeEnds: anchors.map((x) => ({ x: x - 2.5, y: roofY + 1, width: 5, height: 9 })),
    pulleys: [
      { id: "counterweight pulley", x: cwtX, y: cwtEnd, radius: cwtPulley },
      { id: "car pulley", x: carX, y: carEnd, radius: carPulley },
    ],
  };
}

function sheaveAndDeflector(left: number, right: number, y: number, above: boolean) {
  const span = right - left;
  if (span <= 34) {
    const radius = Math.max(4, span / 2);
    const sheave = { x: left + radius, y, radius };
    return {
      wheels: [sheave],
      leftY: y,
      rightY: y,
      over: `M${left} ${y}A${radius} ${radius} 0 0 1 ${right} ${y}`,
    };
  }
  const wheel = Math.min(13, span * 0.29);
  const smaller = Math.min(7, span * 0.16);
  const sheave = { x: left + wheel, y, radius: wheel };
  const deflector = { x: right - smaller, y: y + (above ? 8 : 2), radius: smaller };
  const [from, to] = upperTangent(sheave, deflector);
  const over = `M${left} ${y}A${wheel} ${wheel} 0 0 1 ${from.x} ${from.y}L${to.x} ${to.y}A${smaller} ${smaller} 0 0 1 ${right} ${deflector.y}`;
  return { wheels: [sheave, deflector], leftY: y, rightY: deflector.y, over };
}

/** The common outer tangent that touches two wheels from above. */
export function upperTangent(a: Wheel, b: Wheel): [Point, Point] {
  const dx = b.x - a.x;
  const dy = b.y - a.y;
  const distance = Math.hypot(dx, dy);
  // The normal n has n·d = a.radius − b.radius, so that both touching points lie on one line; y grows downwards.
  const along = Math.max(-1, Math.min(1, (a.radius - b.radius) / distance));
  const aside = Math.sqrt(1 - along * along);
  const nx = (dx * along + dy * aside) / distance;
  const ny = (dy * along - dx * aside) / distance;
  return [
    { x: a.x + nx * a.radius, y: a.y + ny * a.radius },
    { x: b.x + nx * b.radius, y: b.y + ny * b.radius },
  ];
}

function machineLines(wheels: readonly Wheel[], above: boolean, roofY: number): string {
  const sheave = wheels[0];
  if (!sheave) return "";
  const y = above ? roofY - 13 : sheave.y + sheave.radius + 4;
  const end = Math.max(sheave.x + 20, ...wheels.map((wheel) => wheel.x + wheel.radius));
  return `M${sheave.x - 18} ${y}H${above ? end + 4 : sheave.x + 18}`;
}

/** Motor, coupling with brake drum, gear case: left of the sheave, on one axis. */
function gearedMachine(wheels: readonly Wheel[]): Box[] {
  const sheave = wheels[0];
  if (!sheave) return [];
  const right = sheave.x - sheave.radius - 1;
  return [
    { x: right - 44, y: sheave.y - 8, width: 26, height: 16 },
    { x: right - 17, y: sheave.y - 10, width: 5, height: 20 },
    { x: right - 12, y: sheave.y - 5, width: 12, height: 10 },
  ];
}

function boxOfWheels(wheels: readonly Wheel[]): Box {
  const left = Math.min(...wheels.map((wheel) => wheel.x - wheel.radius));
  const right = Math.max(...wheels.map((wheel) => wheel.x + wheel.radius));
  const top = Math.min(...wheels.map((wheel) => wheel.y - wheel.radius));
  const bottom = Math.max(...wheels.map((wheel) => wheel.y + wheel.radius));
  return { x: left, y: top, width: right - left, height: bottom - top };
}

function hydraulic(
  lift: ShaftSectionLift,
  heights: ShaftHeights,
  columns: ShaftColumns,
  carLevel: number,
): ShaftSuspension {
  const { lowest, highest } = ends(heights);
  const side = (columns.counterweight.left + columns.counterweight.right) / 2;
  const middle = (columns.car.left + columns.car.right) / 2;
  const floor = heights.pitFloorY;
  if (lift.roping === "1:1") {
    const top = Math.max(heights.yOf(lowest) + 6, floor - 14);
    const cylinder = {
      x: middle - 8,
      y: top,
      width: 16,
      height: floor + cylinderBelow - top,
      throughFloor: true,
    };
    return {
      ...nothing,
      cylinder,
      ram: { x: middle - 4.5, width: 9, fromY: heights.yOf(carLevel) + 1.5, toY: top },
      buffers: [bufferAt(heights, middle - 26), bufferAt(heights, middle + 26)],
      machineBox: { x: cylinder.x - 4, y: top - 6, width: 24, height: floor - top + 16 },
    };
  }
  const topLevel = heights.pitFloorLevel + 0.5 + (highest - lowest) / 2;
  const top = Math.min(heights.yOf(topLevel), floor - 12);
  const cylinder = { x: side - 6, y: top, width: 12, height: floor - top, throughFloor: false };
  const base = {
    ...nothing,
    cylinder,
    buffers: [bufferAt(heights, middle)],
    machineBox: { x: side - 12, y: top - 8, width: 24, height: 30 },
  };
  if (lift.roping === null || lift.roping === "4:1") return base;
  const pulleyY = heights.yOf(topLevel + 0.6 + (carLevel - lowest) / 2);
  const carFloor = heights.yOf(carLevel) + 5;
  return {
    ...base,
    ram: { x: side - 3, width: 6, fromY: pulleyY, toY: top },
    pulleys: [{ id: "ram pulley", x: side, y: pulleyY, radius: 7 }],
    ropes: [
      { id: "fixed end", x: side - 7, fromY: pulleyY, toY: top + 8 },
      { id: "lifting rope", x: side + 7, fromY: pulleyY, toY: carFloor },
    ],
    ropeEnds: [{ x: side - 10, y: top + 5, width: 4, height: 8 }],
    carBracket: { from: side + 7, to: columns.car.left, y: 5 },
  };
}
