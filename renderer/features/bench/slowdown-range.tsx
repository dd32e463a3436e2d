import { useId } from "react";
import { tickPath, tickSizeFor } from "#shared-lib/drawings/drawing-paths.ts";
import type { UnitSystem } from "#shared-lib/quantities.ts";
import { HatchPatterns, hatchesOf } from "../../ui/drawings/hatch-patterns.tsx";
import { MeasuredDrawing } from "../../ui/drawings/measured-drawing.tsx";
import {
  type SlowdownDrawing,
  type SlowdownPicture,
  slowdownPicture,
  slowdownSentence,
} from "./slowdown-picture.ts";

interface SlowdownRangeProps {
  readonly drawing: SlowdownDrawing;
  readonly system: UnitSystem;
}

/** The way to a terminal landing from the side: dimensions from the level, and where the switch may act. */
export function SlowdownRange({ drawing, system }: SlowdownRangeProps) {
  return (
    <MeasuredDrawing>
      {(size) => (
        <Picture
          picture={slowdownPicture(drawing, size.width, size.textSize, system)}
          label={slowdownSentence(drawing, system)}
          outside={drawing.outside}
        />
      )}
    </MeasuredDrawing>
  );
}

interface PictureProps {
  readonly picture: SlowdownPicture;
  readonly label: string;
  readonly outside: boolean;
}

function Picture({ picture, label, outside }: PictureProps) {
  const id = useId();
  const { width, height } = picture;
  return (
    <div className="drawing-frame">
      <svg
        className="d"
        width={width}
        height={height}
        viewBox={`0 0 ${width} ${height}`}
        role="img"
        aria-label={label}
      >
        <HatchPatterns id={id} />
        <Well picture={picture} hatch={hatchesOf(id).cut} />
        <Allowed picture={picture} hatch={hatchesOf(id).soft} />
        <Chain picture={picture} />
        {picture.places.map((place) => (
          <Place key={place.key} picture={picture} place={place} outside={outside} />
        ))}
      </svg>
    </div>
  );
}

function Well({ picture, hatch }: { readonly picture: SlowdownPicture; readonly hatch: string }) {
  const { wallX, railX, top, bottom, levelY, isTop, textSize } = picture;
  const way = isTop ? "car moving up" : "car moving down";
  const arrowEnd = isTop ? top + 26 : bottom - 26;
  const back = isTop ? 7 : -7;
  return (
    <>
      <text className="q" x={wallX} y={textSize}>
        {way}
      </text>
      <rect className="bare" x={wallX} y={top - 6} width={9} height={bottom - top + 12} fill={hatch} />
      <path className="cut" d={`M${wallX + 9} ${top - 6}V${bottom + 6}`} />
      <path className="cut" d={`M${wallX + 9} ${levelY}h16`} />
      <path
        className="thin edge"
        d={`M${railX} ${top - 6}V${bottom + 6}M${railX + 6} ${top - 6}V${bottom + 6}`}
      />
      <path d={`M${railX - 10} ${(top + bottom) / 2}V${arrowEnd}m-4 ${back}l4 ${-back}l4 ${back}`} />
    </>
  );
}

/** Hatched lightly: the stretch in which the switch may act; it has no far end where no normal start is known. */
function Allowed({ picture, hatch }: { readonly picture: SlowdownPicture; readonly hatch: string }) {
  const { allowed, railX } = picture;
  if (allowed === null) return null;
  const y = Math.min(allowed.from, allowed.to);
  const height = Math.abs(allowed.to - allowed.from);
  return (
    <>
      <rect className="fillp thin edge" x={railX + 12} y={y} width={14} height={height} />
      <rect className="bare" x={railX + 12} y={y} width={14} height={height} fill={hatch} />
    </>
  );
}

function Chain({ picture }: { readonly picture: SlowdownPicture }) {
  const { parts, chainX, textSize, railX } = picture;
  return parts.map((part) => {
    const size = tickSizeFor(Math.abs(part.to - part.from));
    return (
      <g key={part.words}>
        <path className="thin edge" d={`M${railX + 6} ${part.to}H${chainX + 8}`} />
        <path className="thin" d={`M${chainX} ${part.from}V${part.to}`} />
        <path d={`${tickPath(chainX, part.from, size)}${tickPath(chainX, part.to, size)}`} />
        <text className="halo" x={chainX + 12} y={(part.from + part.to) / 2 + textSize * 0.36}>
          {part.words}
        </text>
      </g>
    );
  });
}

interface PlaceProps {
  readonly picture: SlowdownPicture;
  readonly place: SlowdownPicture["places"][number];
  readonly outside: boolean;
}

function Place({ picture, place, outside }: PlaceProps) {
  const { railX, wordsX, textSize } = picture;
  const isSwitch = place.key === "switch";
  const failed = isSwitch && outside;
  const pen = failed ? "pencil" : "";
  const line = { level: "thin chain", required: "limit", normal: "thin dashed", switch: "heavy" }[place.key];
  const word = failed ? "s halo" : isSwitch ? "b halo" : "halo";
  return (
    <g>
      <path
        className={`${line} ${pen}`}
        d={`M${railX - 4} ${place.y}H${isSwitch ? railX + 34 : wordsX - 26}`}
      />
      <path
        className={`thin edge ${pen}`}
        d={`M${isSwitch ? railX + 34 : wordsX - 26} ${place.y}${isSwitch ? `H${wordsX - 26}` : ""}L${wordsX - 10} ${place.wordY}H${wordsX - 4}`}
      />
      {isSwitch ? <path className={`heavy ${pen}`} d={tickPath(railX + 3, place.y, 13)} /> : null}
      {place.lines.map((line, index) => (
        <text
          key={line}
          className={word}
          x={wordsX}
          y={place.wordY + textSize * (0.36 + 1.2 * (index - (place.lines.length - 1) / 2))}
        >
          {line}
        </text>
      ))}
    </g>
  );
}
