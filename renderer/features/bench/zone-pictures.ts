import type { Drawing } from "#shared-lib/calculators/drawing.ts";
import type { LandingDetailInput } from "#shared-lib/drawings/landing-detail.ts";
import type { ZoneBar } from "#shared-lib/drawings/zone-bars.ts";
import type { ZoneBarsInput } from "#shared-lib/drawings/zone-bars-layout.ts";

export type ZoneBarsDrawing = Extract<Drawing, { kind: "zone-bars" }>;
export type MagnetDrawing = Extract<Drawing, { kind: "magnet-detail" }>;

/** Drawings of the well are dimensioned in millimetres; a tenth is finer than any of these is measured. */
const millimetres = (metres: number): number => Math.round(metres * 10_000) / 10;

const names = ["upper", "lower", "both", "either"] as const;

/**
 * Magnet, sensors and bars as one picture on one height axis. Only where all of it is known: sensors on the car, the
 * unlocking zone, and which signals unlock; else the two are drawn apart.
 */
export function zoneTogether(
  bars: ZoneBarsDrawing | undefined,
  magnet: MagnetDrawing | undefined,
  levelWords: string,
): ZoneBarsInput | null {
  if (bars === undefined || magnet === undefined || magnet.sensorsOn !== "car") return null;
  const limit = Math.max(0, ...bars.limits.map((one) => one.at));
  const unlocks = bars.bars.find((bar) => bar.unlocks)?.name;
  if (limit === 0 || (unlocks !== "both" && unlocks !== "either") || bars.limits.length !== 2) return null;
  const error = millimetres(magnet.offset);
  return {
    magnetLength: millimetres(magnet.magnetLength),
    sensorSpacing: millimetres(magnet.sensorSpacing),
    magnetError: error,
    limit: millimetres(limit),
    unlocksWith: unlocks,
    // The calculator has judged the centre; the picture repeats its finding and judges nothing.
    centreTolerance: bars.centre?.outside === true ? Math.max(0, Math.abs(error) - 0.1) : null,
    levelWords,
    measured: names.map((name): ZoneBar => {
      const bar = bars.bars.find((one) => one.name === name);
      const stretch = bar && { from: millimetres(bar.from), to: millimetres(bar.to) };
      return { name, stretches: stretch === undefined ? [] : [stretch] };
    }),
  };
}

/** The detail of one landing with the place found before; null where the sensors are in the well. */
export function landingDetail(
  magnet: MagnetDrawing,
  levelWords: string,
  earlier?: { readonly drawing: MagnetDrawing; readonly words: string },
): LandingDetailInput | null {
  if (magnet.sensorsOn !== "car") return null;
  return {
    magnetLength: millimetres(magnet.magnetLength),
    sensorSpacing: millimetres(magnet.sensorSpacing),
    magnetError: millimetres(magnet.offset),
    outside: magnet.outside,
    levelWords,
    ...(earlier === undefined
      ? {}
      : { earlier: { magnetError: millimetres(earlier.drawing.offset), words: earlier.words } }),
  };
}
