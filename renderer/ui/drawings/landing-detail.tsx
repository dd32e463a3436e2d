import { useId } from "react";
import { tickPath, tickSizeFor } from "#shared-lib/drawings/drawing-paths.ts";
import type { LandingDetailInput, LandingDetailLayout } from "#shared-lib/drawings/landing-detail.ts";
import { landingDetailLayout, landingDetailSentence } from "#shared-lib/drawings/landing-detail.ts";
import { HatchPatterns, hatchesOf } from "./hatch-patterns.tsx";
import { MeasuredDrawing } from "./measured-drawing.tsx";

/** Magnet and sensors of one landing, true to scale, dimensioned in millimetres without the unit. */
export function LandingDetail(props: LandingDetailInput) {
  return (
    <MeasuredDrawing>
      {(size) => (
        <DetailPicture input={props} layout={landingDetailLayout(props, size.width, size.textSize)} />
      )}
    </MeasuredDrawing>
  );
}

interface DetailProps {
  readonly input: LandingDetailInput;
  readonly layout: LandingDetailLayout;
}

export function DetailPicture({ input, layout }: DetailProps) {
  const id = useId();
  const { width, height } = layout;
  return (
    <>
      <div className="drawing-frame">
        <svg
          className="d"
          width={width}
          height={height}
          viewBox={`0 0 ${width} ${height}`}
          role="img"
          aria-label={landingDetailSentence(input)}
        >
          <HatchPatterns id={id} />
          <DetailWell layout={layout} input={input} hatch={hatchesOf(id).cut} />
          <DetailSensors layout={layout} />
          <DetailDimensions layout={layout} outside={input.outside} />
        </svg>
      </div>
      <figcaption className="drawing-words soft">
        {`Scale about 1:${layout.ratio}, dimensions in mm.`}
        {layout.notRecorded.length > 0 ? ` Not recorded: ${layout.notRecorded.join(", ")}.` : null}
      </figcaption>
    </>
  );
}

function DetailWell({ layout, input, hatch }: DetailProps & { readonly hatch: string }) {
  const { levelY, railX, magnet, ghost, magnetMiddleY, width, textSize, height } = layout;
  const bottom = height - textSize;
  const ghostEnd = ghost ? ghost.y + ghost.height : 0;
  return (
    <>
      <path className="thin edge chain" d={`M${railX - 26} ${levelY}H${width - 14}`} />
      <text className="q e halo" x={width - 14} y={levelY - 6}>
        {input.levelWords}
      </text>
      <path className="edge thin" d={`M${railX} 14V${bottom}M${railX + 6} 14V${bottom}`} />
      {ghost ? <rect className="construction thin dashed" {...ghost} /> : null}
      <path className="thin" d={`M${railX + 6} ${magnetMiddleY}H${railX + 18}`} />
      {magnet ? (
        <>
          <rect className="fillp" {...magnet} />
          <rect className="bare" {...magnet} fill={hatch} />
        </>
      ) : (
        <path className="thin" d={`M${railX + 18} ${magnetMiddleY - 10}v20`} />
      )}
      {ghost ? (
        <>
          <path
            className="construction thin"
            d={`M${ghost.x + ghost.width} ${ghostEnd}l14 ${textSize * 1.1}h10`}
          />
          <text className="g" x={ghost.x + ghost.width + 28} y={ghostEnd + textSize * 1.46}>
            {layout.ghostWords}
          </text>
        </>
      ) : null}
    </>
  );
}

function DetailSensors({ layout }: { readonly layout: LandingDetailLayout }) {
  const { sensors, sensorX, carX } = layout;
  const ys = sensors.map((sensor) => sensor.y);
  return (
    <>
      {sensors.map((sensor) => (
        <g key={sensor.name}>
          <rect className="fillp" x={sensorX} y={sensor.y - 6} width={22} height={12} />
          <path className="thin" d={`M${sensorX + 22} ${sensor.y}H${carX}`} />
          <text className="halo" x={carX + 6} y={sensor.wordY}>
            {sensor.name}
          </text>
        </g>
      ))}
      <path d={`M${carX} ${Math.min(...ys) - 14}V${Math.max(...ys) + 14}`} />
    </>
  );
}

function DetailDimensions({
  layout,
  outside,
}: {
  readonly layout: LandingDetailLayout;
  readonly outside: boolean;
}) {
  const { lengthDimension: length, error, magnet, textSize } = layout;
  const pen = outside ? "pencil" : "";
  const tick = tickSizeFor(error ? error.to - error.from : 0);
  return (
    <>
      {length ? (
        <>
          <path className="thin" d={`M${length.x} ${length.top}V${length.bottom}`} />
          <path d={`${tickPath(length.x, length.top)}${tickPath(length.x, length.bottom)}`} />
          <text
            className="c"
            transform={`translate(${length.x - 8} ${(length.top + length.bottom) / 2 + textSize * 0.7}) rotate(-90)`}
          >
            {length.words}
          </text>
        </>
      ) : null}
      {error && magnet ? (
        <>
          <path
            className={`thin ${pen}`}
            d={`M${magnet.x + 17} ${error.from}H${error.x + 6}M${magnet.x + 17} ${error.to}H${error.x + 6}`}
          />
          <path className={`thin ${pen}`} d={`M${error.x} ${error.from - 14}V${error.to + 14}`} />
          <path
            className={pen}
            d={`${tickPath(error.x, error.from, tick)}${tickPath(error.x, error.to, tick)}`}
          />
          <text className={outside ? "s e large" : "e large"} x={error.x - 8} y={error.wordY}>
            {error.words}
          </text>
        </>
      ) : null}
    </>
  );
}
