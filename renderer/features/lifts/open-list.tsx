import { RuledTitle } from "../../ui/ruled-title.tsx";
import { TriangleNumber } from "../../ui/triangle-number.tsx";
import type { Concern } from "./lift-drawing.ts";

interface OpenListProps {
  readonly concerns: readonly Concern[];
  readonly chosenId: string | null;
  readonly onChoose: (concern: Concern) => void;
}

/** The other things that need a person, each under its number: the target where marks on the drawing lie close. */
export function OpenList({ concerns, chosenId, onChoose }: OpenListProps) {
  const others = concerns.filter((concern) => concern.id !== chosenId);
  if (others.length === 0) return null;
  return (
    <section>
      <RuledTitle count={others.length}>{chosenId === null ? "Open on this lift" : "Also open"}</RuledTitle>
      <ul className="open-list">
        {others.map((concern) => (
          <li key={concern.id}>
            <button type="button" className="open-list-row" onClick={() => onChoose(concern)}>
              <TriangleNumber number={concern.number} />
              <span>{concern.words}</span>
            </button>
          </li>
        ))}
      </ul>
    </section>
  );
}
