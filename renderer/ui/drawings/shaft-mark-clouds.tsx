import type { KeyboardEvent } from "react";
import { cloudPath, grownBox } from "#shared-lib/drawings/drawing-paths.ts";
import type { PlacedMark } from "#shared-lib/drawings/shaft-marks.ts";
import type { ShaftChoice, ShaftMark } from "#shared-lib/drawings/shaft-section.ts";
import { NumberedTriangle } from "./numbered-triangle.tsx";

interface MarksProps {
  readonly textSize: number;
  readonly marks: readonly PlacedMark[];
  readonly onChoose?: ((choice: ShaftChoice) => void) | undefined;
}

/** What needs a person: a cloud round the place and a numbered triangle beside it. */
export function ShaftMarkClouds({ marks, textSize, onChoose }: MarksProps) {
  return marks.map((placed) => {
    const first = placed.triangles[0];
    if (!first) return null;
    return (
      <g key={placed.triangles.map((triangle) => triangle.mark.id).join(" ")}>
        <path className="pencil" d={cloudPath(placed.cloud)} pointerEvents="none" />
        <path
          className="pencil thin cloud-second"
          d={cloudPath(grownBox(placed.cloud, 3))}
          pointerEvents="none"
        />
        <path className="pencil thin" d={placed.leader} pointerEvents="none" />
        {placed.triangles.map((triangle, index) => (
          <MarkButton
            key={triangle.mark.id}
            {...triangle}
            textSize={textSize}
            target={index === 0 ? placed.target : null}
            onChoose={onChoose}
          />
        ))}
      </g>
    );
  });
}

const kindWords: Record<ShaftMark["kind"], string> = {
  failed: "failed",
  "open-fault": "open fault",
  bridge: "bridge open",
  danger: "danger",
};

interface ButtonProps {
  readonly textSize: number;
  readonly mark: ShaftMark;
  readonly x: number;
  readonly y: number;
  readonly target: PlacedMark["target"];
  readonly onChoose?: ((choice: ShaftChoice) => void) | undefined;
}

function MarkButton({ mark, x, y, textSize, target, onChoose }: ButtonProps) {
  const choose = () => onChoose?.({ kind: "mark", mark });
  const onKeyDown = (event: KeyboardEvent) => {
    if (event.key !== "Enter" && event.key !== " ") return;
    event.preventDefault();
    choose();
  };
  const press = onChoose ? { role: "button", tabIndex: 0, onClick: choose, onKeyDown } : { role: "img" };
  return (
    <g
      className={onChoose ? "press" : ""}
      data-mark={mark.number}
      aria-label={`Mark ${mark.number}, ${kindWords[mark.kind]}: ${mark.words}`}
      {...press}
    >
      {target && onChoose ? <rect className="hit" {...target} /> : null}
      <NumberedTriangle x={x} y={y} number={mark.number} textSize={textSize} />
    </g>
  );
}
