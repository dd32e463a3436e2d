interface CalloutProgressProps {
  /** All events of this callout in order: six, or seven when people were inside. */
  readonly steps: readonly string[];
  /** How many of them are made. */
  readonly made: number;
}

const from = 9;
const to = 97;

/** A line of ticks: made ones oblique and heavy, the next under a small triangle, and its name. */
export function CalloutProgress({ steps, made }: CalloutProgressProps) {
  const next = steps[made];
  const place = (i: number) => from + ((to - from) * i) / Math.max(1, steps.length - 1);
  return (
    <span className="progress">
      <svg className="drawing progress-line" viewBox="0 0 106 18" aria-hidden="true">
        <path className="pen-thin" d="M5 9H101" />
        {steps.map((step, i) => {
          const x = place(i);
          if (i < made) return <path key={step} d={`M${x - 5} 14L${x + 5} 4`} className="tick-made" />;
          if (i > made) return <path key={step} className="pen-edge" d={`M${x} 6V12`} />;
          return (
            <g key={step}>
              <path className="pen-next" d={`M${x} 3V15`} />
              <path className="fill-ink" d={`M${x - 4.5} 0h9l-4.5 5z`} />
            </g>
          );
        })}
      </svg>
      <span>{next ?? "all done"}</span>
    </span>
  );
}
