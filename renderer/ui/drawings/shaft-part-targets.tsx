import type { KeyboardEvent } from "react";
import type { PartTarget } from "#shared-lib/drawings/shaft-parts.ts";
import type { ShaftChoice } from "#shared-lib/drawings/shaft-section.ts";

interface TargetsProps {
  readonly parts: readonly PartTarget[];
  readonly onChoose?: ((choice: ShaftChoice) => void) | undefined;
}

/** Invisible targets over the machine, the pit and the terminal switches' words. */
export function ShaftPartTargets({ parts, onChoose }: TargetsProps) {
  if (!onChoose) return null;
  return parts.map((part) => <Target key={part.words} part={part} onChoose={onChoose} />);
}

interface TargetProps {
  readonly part: PartTarget;
  readonly onChoose: (choice: ShaftChoice) => void;
}

function Target({ part, onChoose }: TargetProps) {
  const choose = () =>
    onChoose({
      kind: "part",
      part: part.part,
      ...(part.switch === undefined ? {} : { switch: part.switch }),
    });
  const onKeyDown = (event: KeyboardEvent) => {
    if (event.key !== "Enter" && event.key !== " ") return;
    event.preventDefault();
    choose();
  };
  const press = { role: "button", tabIndex: 0, onClick: choose, onKeyDown };
  return (
    <g className="press" data-part={part.switch ?? part.part} aria-label={part.words} {...press}>
      <rect className="hit" {...part.box} />
    </g>
  );
}
