import { tickPath, tickSizeFor } from "#shared-lib/drawings/drawing-paths.ts";
import { errorWords } from "#shared-lib/drawings/landing-detail.ts";
import { letteringWidth } from "#shared-lib/drawings/text-width.ts";
import type { ZoneBarsInput, ZoneBarsLayout } from "#shared-lib/drawings/zone-bars-layout.ts";
import type { ZoneWellWords } from "#shared-lib/drawings/zone-well-words.ts";
import { zoneWellWords } from "#shared-lib/drawings/zone-well-words.ts";

interface WellProps {
  readonly input: ZoneBarsInput;
  readonly layout: ZoneBarsLayout;
  readonly hatch: string;
}

interface WithWords {
  readonly words: ZoneWellWords;
}

/** Behind the spacing's dimension line, where nothing else stands on the level's line. */
const levelX = 206;

/** The well with the car level: wall, rail, magnet hatched and dimensioned, sensors with their words. */
export function ZoneWell({ input, layout, hatch }: WellProps) {
  const { wellTop, wellBottom, wellZeroY, textSize, sideBySide, width } = layout;
  const words = zoneWellWords(input, layout);
  const chainEnd = sideBySide
    ? layout.barsRight - 6
    : Math.min(width - 8, levelX + letteringWidth(input.levelWords, textSize) + 8);
  return (
    <>
      <text className="q" x={14} y={textSize}>
        In the well, car level
      </text>
      <rect className="bare" x={14} y={wellTop} width={9} height={wellBottom - wellTop} fill={hatch} />
      <path className="cut" d={`M23 ${wellTop}V${wellBottom}`} />
      <path className="thin edge" d={`M40 ${wellTop}V${wellBottom}M46 ${wellTop}V${wellBottom}`} />
      <path className="thin chain" d={`M30 ${wellZeroY}H${chainEnd}`} />
      <text className="halo" x={levelX} y={words.level}>
        {input.levelWords}
      </text>
      <WellMagnet input={input} layout={layout} hatch={hatch} words={words} />
      <WellSensors input={input} layout={layout} words={words} />
      <WellError input={input} layout={layout} words={words} />
    </>
  );
}

function WellMagnet({ input, layout, hatch, words }: WellProps & WithWords) {
  const { pixelsPerMillimetre: scale, wellZeroY, textSize } = layout;
  const height = input.magnetLength * scale;
  const top = wellZeroY - input.magnetError * scale - height / 2;
  const box = { x: 58, y: top, width: 20, height };
  const ghostTop = wellZeroY - height / 2;
  return (
    <>
      {words.nominal ? (
        <>
          <rect className="construction thin dashed" {...box} y={ghostTop} />
          <path
            className="thin construction"
            d={`M78 ${words.nominal.fromY}L${words.nominal.below ? 88 : 112} ${words.nominal.y - textSize * 0.36}H122`}
          />
          <text className="g halo" x={126} y={words.nominal.y}>
            nominal place
          </text>
        </>
      ) : null}
      <path className="thin" d={`M46 ${top + height * 0.3}H58M46 ${top + height * 0.7}H58`} />
      <rect className="fillp" {...box} />
      <rect className="bare" {...box} fill={hatch} />
      <path className="thin edge" d={`M80 ${top}H96M80 ${top + height}H96`} />
      <path className="thin" d={`M90 ${top}V${top + height}`} />
      <path d={`${tickPath(90, top)}${tickPath(90, top + height)}`} />
      <text className="halo" x={98} y={words.magnet}>
        {`${input.magnetLength} magnet`}
      </text>
    </>
  );
}

function WellSensors({ input, layout, words }: Omit<WellProps, "hatch"> & WithWords) {
  const { pixelsPerMillimetre: scale, wellZeroY } = layout;
  const gap = input.sensorSpacing * scale;
  const upper = wellZeroY - gap / 2;
  const lower = wellZeroY + gap / 2;
  const dimension = 184;
  return (
    <>
      {[upper, lower].map((y) => (
        <g key={y}>
          <rect className="fillp" x={98} y={y - 8} width={32} height={16} />
          <circle className="fill" cx={104} cy={y} r={2} />
          <path className="thin" d={`M130 ${y}H148`} />
        </g>
      ))}
      <text className="halo" x={98} y={words.upperSensor}>
        upper zone sensor
      </text>
      <text className="halo" x={98} y={words.lowerSensor}>
        lower zone sensor
      </text>
      <path d={`M148 ${upper - 9}V${lower + 9}`} />
      <path className="thin edge" d={`M150 ${upper}H${dimension + 6}M150 ${lower}H${dimension + 6}`} />
      <path className="thin" d={`M${dimension} ${upper}V${lower}`} />
      <path d={`${tickPath(dimension, upper)}${tickPath(dimension, lower)}`} />
      <text className="halo" x={dimension + 8} y={words.spacing}>
        {input.sensorSpacing}
      </text>
    </>
  );
}

function WellError({ input, layout, words }: Omit<WellProps, "hatch"> & WithWords) {
  const error = input.magnetError;
  if (Math.round(error) === 0) return null;
  const { pixelsPerMillimetre: scale, wellZeroY } = layout;
  const nominal = wellZeroY - (input.magnetLength / 2) * scale;
  const actual = nominal - error * scale;
  const outside = layout.centre?.outside ?? false;
  const pen = outside ? "pencil" : "";
  const top = Math.min(nominal, actual);
  const tick = tickSizeFor(Math.abs(nominal - actual));
  return (
    <>
      <path className={`thin ${pen}`} d={`M80 ${nominal}H228M80 ${actual}H228`} />
      <path className={`thin ${pen}`} d={`M220 ${top - 25}V${Math.max(nominal, actual) + 25}`} />
      <path className={pen} d={`${tickPath(220, nominal, tick)}${tickPath(220, actual, tick)}`} />
      <text className={outside ? "s large" : "large"} x={230} y={words.error}>
        {errorWords(error)}
      </text>
    </>
  );
}
