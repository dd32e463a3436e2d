import type { ZoneBarsInput, ZoneBarsLayout } from "./zone-bars-layout.ts";

/** Baselines of the words in the well, each kept clear of the others whatever the magnet's length and place. */
export interface ZoneWellWords {
  readonly upperSensor: number;
  readonly lowerSensor: number;
  readonly magnet: number;
  readonly spacing: number;
  readonly level: number;
  /** Null: the magnet is so near its nominal place that no ghost is drawn. */
  readonly nominal: { readonly y: number; readonly fromY: number; readonly below: boolean } | null;
  readonly error: number;
}

export function zoneWellWords(input: ZoneBarsInput, layout: ZoneBarsLayout): ZoneWellWords {
  const { pixelsPerMillimetre: scale, wellZeroY, textSize } = layout;
  const half = (input.magnetLength / 2) * scale;
  const shift = (input.sensorSpacing / 2) * scale;
  const bottom = wellZeroY - input.magnetError * scale + half;
  const upperSensor = wellZeroY - shift - 15;
  const lowerSensor = wellZeroY + shift + 12 + textSize;
  const besideMagnet = bottom - textSize * 2;
  const magnet = Math.max(besideMagnet, lowerSensor + textSize * 1.6);
  const moved = Math.abs(input.magnetError) * scale > 1;
  const nominalTop = wellZeroY - half;
  const aboveSensors = nominalTop + 4 + textSize * 2.75;
  const roomAbove = aboveSensors <= upperSensor - textSize * 1.2;
  const nominal = roomAbove
    ? { y: aboveSensors, fromY: nominalTop + 4, below: false }
    : { y: magnet + textSize * 1.6, fromY: wellZeroY + half - 2, below: true };
  const top = Math.min(nominalTop, nominalTop - input.magnetError * scale);
  return {
    upperSensor,
    lowerSensor,
    magnet,
    spacing: wellZeroY + textSize * 1.26,
    level: wellZeroY - 6,
    nominal: moved ? nominal : null,
    // Over the sensors' words where the magnet is too short to carry it above them.
    error: Math.min(top - 8, wellZeroY - textSize * 1.9),
  };
}
