interface PrintFactsProps {
  /** Names with their words, in order; a name without words is left out. */
  readonly facts: readonly (readonly [string, string])[];
}

export function PrintFacts({ facts }: PrintFactsProps) {
  return (
    <dl className="facts">
      {facts
        .filter(([, words]) => words !== "")
        .map(([name, words]) => (
          <div key={`${name} ${words}`}>
            <dt>{name}</dt>
            <dd>{words}</dd>
          </div>
        ))}
    </dl>
  );
}
