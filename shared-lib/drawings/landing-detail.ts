/** The detail of one landing's zone magnet against the car's sensors; millimetres, up positive. */
export interface LandingDetailInput {
  readonly magnetLength: number | null;
  readonly sensorSpacing: number | null;
  /** The magnet's middle above (+) or below (−) its nominal place; null: not measured. */
  readonly magnetError: number | null;
  /** Only an error outside its own tolerance is drawn in red pencil. */
  readonly outside: boolean;
  /** "level 3". */
  readonly levelWords: string;
  /** Where it was found before, drawn dashed in construction blue: its error then, and "place on 4 Feb 2026". */
  readonly earlier?: { readonly magnetError: number; readonly words: string };
}

export interface LandingDetailLayout {
  readonly width: number;
  readonly height: number;
  readonly textSize: number;
  /** The picture is true to scale 1 : ratio at 96 pixels an inch. */
  readonly ratio: number;
  readonly levelY: number;
  readonly railX: number;
  readonly magnet: {
    readonly x: number;
    readonly y: number;
    readonly width: number;
    readonly height: number;
  } | null;
  readonly magnetMiddleY: number;
  /** Where a magnet without error, or the earlier one, stands; null where it would lie under the magnet. */
  readonly ghost: {
    readonly x: number;
    readonly y: number;
    readonly width: number;
    readonly height: number;
  } | null;
  readonly ghostWords: string;
  readonly sensors: readonly {
    readonly name: "upper" | "lower";
    readonly y: number;
    readonly wordY: number;
  }[];
  readonly sensorX: number;
  readonly carX: number;
  readonly lengthDimension: {
    readonly x: number;
    readonly top: number;
    readonly bottom: number;
    readonly words: string;
  } | null;
  readonly error: {
    readonly x: number;
    readonly from: number;
    readonly to: number;
    readonly words: string;
    readonly wordY: number;
  } | null;
  readonly notRecorded: readonly string[];
}

const pixelsPerMillimetre = 96 / 25.4;
/** Scales of detail drawings; six is usual, the others serve longer or shorter magnets. */
const ratios = [6, 8, 10, 12, 15, 20, 30, 50] as const;
const tallestMagnet = 230;
const magnetAsDrawn = 240;
const spacingAsDrawn = 60;
const magnetWidth = 15;

export function landingDetailLayout(
  input: LandingDetailInput,
  width: number,
  textSize: number,
): LandingDetailLayout {
  const error = input.magnetError ?? 0;
  const length = input.magnetLength ?? magnetAsDrawn;
  const spacing = input.sensorSpacing ?? spacingAsDrawn;
  const extent = Math.max(length + 2 * Math.abs(error), spacing * 1.5);
  const ratio = ratios.find((candidate) => (extent * pixelsPerMillimetre) / candidate <= tallestMagnet) ?? 50;
  const scale = pixelsPerMillimetre / ratio;
  const half = (Math.max(extent, 2 * Math.abs(input.earlier?.magnetError ?? 0) + length) / 2) * scale;
  const levelY = half + textSize * 2.4;
  const railX = 44 + (textSize - 14) * 1.5;
  const magnetX = railX + 18;
  const box = (middle: number) => ({
    x: magnetX,
    y: levelY - middle * scale - (length * scale) / 2,
    width: magnetWidth,
    height: length * scale,
  });
  const ghostError = input.earlier?.magnetError ?? 0;
  const magnet = input.magnetLength === null ? null : box(error);
  const sensorGap = Math.max(spacing * scale, 15);
  return {
    width: Math.max(width, 240 + (textSize - 14) * 8),
    height: Math.ceil(levelY + half + textSize * 2),
    textSize,
    ratio,
    levelY,
    railX,
    magnet,
    magnetMiddleY: levelY - error * scale,
    ghost: magnet && Math.abs(ghostError - error) * scale > 1 ? box(ghostError) : null,
    ghostWords: input.earlier?.words ?? "nominal place",
    sensors: [
      { name: "upper", y: levelY - sensorGap / 2, wordY: levelY - sensorGap / 2 - 2 },
      { name: "lower", y: levelY + sensorGap / 2, wordY: levelY + sensorGap / 2 + textSize * 0.6 },
    ],
    sensorX: magnetX + magnetWidth + 13,
    carX: magnetX + magnetWidth + 51,
    lengthDimension: magnet
      ? { x: railX - 14, top: magnet.y, bottom: magnet.y + magnet.height, words: String(length) }
      : null,
    error: magnet
      ? errorDimension(input, levelY, length * scale, scale, Math.min(width - 24, magnetX + 138))
      : null,
    notRecorded: [
      ...(input.magnetLength === null ? ["magnet length"] : []),
      ...(input.sensorSpacing === null ? ["sensor spacing"] : []),
      ...(input.magnetError === null ? ["place of the magnet"] : []),
    ],
  };
}

function errorDimension(
  input: LandingDetailInput,
  levelY: number,
  height: number,
  scale: number,
  x: number,
): LandingDetailLayout["error"] {
  const error = input.magnetError;
  if (error === null || Math.round(error) === 0) return null;
  const nominalTop = levelY - height / 2;
  const top = nominalTop - error * scale;
  const [from, to] = top < nominalTop ? [top, nominalTop] : [nominalTop, top];
  return { x, from, to, words: errorWords(error), wordY: from - 7 };
}

/** "17 low", "4 high": as it is written on the drawing, in millimetres without the unit. */
export function errorWords(error: number): string {
  const rounded = Math.round(error);
  if (rounded === 0) return "at its place";
  return `${Math.abs(rounded)} ${rounded < 0 ? "low" : "high"}`;
}

export function landingDetailSentence(input: LandingDetailInput): string {
  const length = input.magnetLength === null ? "of unrecorded length" : `${input.magnetLength} mm long`;
  if (input.magnetError === null)
    return `Detail: zone magnet ${length} at ${input.levelWords}; its place is not measured.`;
  const rounded = Math.round(input.magnetError);
  const place =
    rounded === 0 ? "is at its place" : `sits ${Math.abs(rounded)} mm ${rounded < 0 ? "low" : "high"}`;
  return `Detail: zone magnet ${length} ${place} at ${input.levelWords}.`;
}
