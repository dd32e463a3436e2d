import type { Drawing } from "#shared-lib/calculators/drawing.ts";
import { spreadLabels } from "#shared-lib/drawings/spread-labels.ts";
import { letteringWidth } from "#shared-lib/drawings/text-width.ts";
import { type UnitSystem, writeQuantity } from "#shared-lib/quantities.ts";

export type SlowdownDrawing = Extract<Drawing, { kind: "slowdown-range" }>;

export interface SlowdownPlace {
  readonly key: "level" | "required" | "normal" | "switch";
  /** Metres before the level. */
  readonly at: number;
  readonly words: string;
}

/** The places on the way to the terminal landing, nearest to its level first. */
export function slowdownPlaces(drawing: SlowdownDrawing): readonly SlowdownPlace[] {
  const places: SlowdownPlace[] = [
    { key: "level", at: 0, words: "level" },
    { key: "required", at: drawing.required, words: "latest place of the switch" },
  ];
  if (drawing.normalStart !== null) {
    places.push({ key: "normal", at: drawing.normalStart, words: "normal start of slowdown" });
  }
  if (drawing.switchAt !== null) places.push({ key: "switch", at: drawing.switchAt, words: "switch" });
  return places.sort((one, other) => one.at - other.at);
}

export interface SlowdownPicture {
  readonly width: number;
  readonly height: number;
  readonly textSize: number;
  readonly top: number;
  readonly bottom: number;
  /** Left to right: cut wall, guide rail, chain of dimensions, words of the places. */
  readonly wallX: number;
  readonly railX: number;
  readonly chainX: number;
  readonly wordsX: number;
  readonly levelY: number;
  readonly isTop: boolean;
  readonly places: readonly (SlowdownPlace & {
    readonly y: number;
    readonly wordY: number;
    /** One line where there is room beside the chain, else words and number below each other. */
    readonly lines: readonly string[];
  })[];
  /** Margin, stop, reaction: from the level outwards; parts of no length are left out. */
  readonly parts: readonly { readonly words: string; readonly from: number; readonly to: number }[];
  /** Where the switch may act, in pixels; null: there is no such place. */
  readonly allowed: { readonly from: number; readonly to: number; readonly open: boolean } | null;
}

const finite = (value: number): number => (Number.isFinite(value) ? value : 0);

type Write = (value: number) => string;

/** Margin, stop and reaction as a chain of dimensions from the level outwards. */
function measuredParts(
  drawing: SlowdownDrawing,
  yOf: (at: number) => number,
  write: Write,
): SlowdownPicture["parts"] {
  const measures = [
    ["margin", drawing.margin],
    ["stop", drawing.stop],
    ["reaction", drawing.reaction],
  ] as const;
  let reached = 0;
  return measures.flatMap(([words, length]) => {
    if (!(length > 0)) return [];
    const from = yOf(reached);
    reached += length;
    return [{ words: `${words} ${write(length)}`, from, to: yOf(reached) }];
  });
}

function allowedStretch(
  { required, normalStart }: SlowdownDrawing,
  yOf: (at: number) => number,
  furthest: number,
): SlowdownPicture["allowed"] {
  if (normalStart !== null && normalStart <= required) return null;
  return { from: yOf(required), to: yOf(normalStart ?? furthest), open: normalStart === null };
}

function placeLines(place: SlowdownPlace, oneLine: boolean, write: Write): readonly string[] {
  if (place.key === "level") return [place.words];
  return oneLine ? [`${place.words} ${write(place.at)}`] : [place.words, write(place.at)];
}

/** Geometry of the places before a terminal landing: to scale along the well, the way of the car up or down. */
export function slowdownPicture(
  drawing: SlowdownDrawing,
  given: number,
  textSize: number,
  system: UnitSystem,
): SlowdownPicture {
  const isTop = drawing.side === "up";
  const places = slowdownPlaces(drawing);
  const furthest = Math.max(1e-6, ...places.map((place) => finite(place.at))) * 1.06;
  const head = textSize * 2.2;
  const span = Math.max(220, Math.min(320, given * 0.5));
  const top = head;
  const bottom = head + span;
  const yOf = (at: number): number => {
    const part = Math.min(1, Math.max(0, finite(at) / furthest)) * span;
    return isTop ? top + part : bottom - part;
  };
  const write = (value: number): string => writeQuantity(value, "m", { digits: 3, system });
  const parts = measuredParts(drawing, yOf, write);
  const partsWidth = Math.max(60, ...parts.map((part) => letteringWidth(part.words, textSize)));
  const chainX = 92;
  const wordsX = Math.ceil(chainX + 24 + partsWidth + 40);
  const widest = (oneLine: boolean): number =>
    Math.max(
      ...places.flatMap((place) =>
        placeLines(place, oneLine, write).map((line) => letteringWidth(line, textSize, true)),
      ),
    );
  const oneLine = wordsX + 4 + widest(true) <= given;
  const wordYs = spreadLabels(
    places.map((place) => ({
      anchor: yOf(place.at),
      extent: textSize * (0.1 + 1.2 * placeLines(place, oneLine, write).length),
    })),
    top - textSize * 0.7,
    bottom + textSize * 0.7,
  );
  const shown = places.map((place, index) => ({
    ...place,
    y: yOf(place.at),
    wordY: wordYs[index] ?? yOf(place.at),
    lines: placeLines(place, oneLine, write),
  }));
  return {
    width: Math.max(given, Math.ceil(wordsX + 4 + widest(oneLine))),
    height: Math.ceil(bottom + textSize * 2.2),
    textSize,
    top,
    bottom,
    wallX: 14,
    railX: 48,
    chainX,
    wordsX,
    levelY: yOf(0),
    isTop,
    places: shown,
    parts,
    allowed: allowedStretch(drawing, yOf, furthest),
  };
}

/** What a reader hears instead of the picture. */
export function slowdownSentence(drawing: SlowdownDrawing, system: UnitSystem): string {
  const write = (value: number): string => writeQuantity(value, "m", { digits: 3, system });
  const said = slowdownPlaces(drawing)
    .filter((place) => place.key !== "level")
    .map((place) => `${place.words} ${write(place.at)} before the level`);
  const landing = drawing.side === "up" ? "Top landing, moving up" : "Bottom landing, moving down";
  return `${landing}: ${said.join(", ")}.`;
}
