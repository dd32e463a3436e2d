import { z } from "zod";

/**
 * What a calculator asks to have drawn: plain numbers in SI, up positive. The renderer draws from them and adds no
 * number of its own.
 */
const number = z.number();

/** Bars of the car positions at which each signal is on, on one common height axis. */
const zoneBars = z.object({
  kind: z.literal("zone-bars"),
  title: z.string(),
  bars: z.array(
    z.object({ name: z.string(), from: number, to: number, length: number, unlocks: z.boolean() }),
  ),
  limits: z.array(z.object({ at: number, words: z.string() })),
  centre: z.object({ at: number, words: z.string(), outside: z.boolean() }).nullable(),
});

/** The magnet and the two sensors in the well with the car level, from the side. */
const magnetDetail = z.object({
  kind: z.literal("magnet-detail"),
  title: z.string(),
  landing: z.string(),
  sensorsOn: z.enum(["car", "well"]),
  magnetLength: number,
  /** Height of the magnet's middle above its nominal place; of the sensors' middle where they are in the well. */
  offset: number,
  offsetWords: z.string(),
  outside: z.boolean(),
  /** Distance between the two sensors, upper over lower. */
  sensorSpacing: number,
});

/** Edges of the two zone signals in the order they come, expected on the left and seen on the right. */
const edgeOrder = z.object({
  kind: z.literal("edge-order"),
  title: z.string(),
  runs: z.array(
    z.object({
      direction: z.enum(["up", "down"]),
      expected: z.array(z.string()),
      seen: z.array(z.string()).nullable(),
      word: z.string(),
      right: z.boolean().nullable(),
    }),
  ),
});

const axis = z.object({ label: z.string(), quantity: z.string(), unit: z.string(), digits: z.int() });

/** Curves over one axis; limits are lines across, `wrongSide` is hatched. */
const curve = z.object({
  kind: z.literal("curve"),
  title: z.string(),
  x: axis,
  y: axis,
  series: z.array(z.object({ name: z.string(), points: z.array(z.tuple([number, number])) })),
  /** Single readings beside the curves; the first set is drawn filled, the second open. */
  dots: z.array(z.object({ name: z.string(), points: z.array(z.tuple([number, number])) })).optional(),
  limits: z.array(
    z.object({
      axis: z.enum(["x", "y"]),
      at: number,
      words: z.string(),
      wrongSide: z.enum(["above", "below"]).nullable(),
    }),
  ),
  marks: z.array(z.object({ x: number, y: number, words: z.string(), outside: z.boolean() })),
});

/** Places along the way of the car towards a terminal landing: distances before its level. */
const slowdownRange = z.object({
  kind: z.literal("slowdown-range"),
  title: z.string(),
  side: z.enum(["up", "down"]),
  reaction: number,
  stop: number,
  margin: number,
  required: number,
  normalStart: number.nullable(),
  switchAt: number.nullable(),
  outside: z.boolean(),
});

/** The bus as one line through the panels to its ends. `found` is what the reading says about the terminators. */
const busLine = z.object({
  kind: z.literal("bus-line"),
  title: z.string(),
  length: number.nullable(),
  panels: z.int(),
  found: z.enum(["two", "one", "none", "more than two", "short", "unclear", "not measured"]),
  words: z.string(),
});

/** A rope in the groove of its sheave, in section. Whole angles, rad, as EN 81-50 names them. */
const groove = z.object({
  kind: z.literal("groove"),
  title: z.string(),
  form: z.enum(["round", "wedge", "hardened wedge"]),
  /** Between the flanks. */
  gamma: number,
  /** Undercut seen from the middle of the rope; 0 without. */
  beta: number,
  ropeDiameter: number.nullable(),
});

export const drawingSchema = z.discriminatedUnion("kind", [
  zoneBars,
  magnetDetail,
  edgeOrder,
  curve,
  slowdownRange,
  busLine,
  groove,
]);
export type Drawing = z.infer<typeof drawingSchema>;
