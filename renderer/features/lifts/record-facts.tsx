import { type RecordField, type RecordValues, sectionsOf, shownValue } from "./record-fields.ts";

interface RecordFactsProps {
  readonly fields: readonly RecordField[];
  readonly values: RecordValues;
}

/** Everything recorded, by section. What is not recorded is said once a section, so that the gaps are seen. */
export function RecordFacts({ fields, values }: RecordFactsProps) {
  return (
    <div className="lift-facts">
      {sectionsOf(fields).map((section) => (
        <FactsOfSection key={section.title} {...section} values={values} />
      ))}
    </div>
  );
}

interface FactsOfSectionProps extends RecordFactsProps {
  readonly title: string;
}

function FactsOfSection({ title, fields, values }: FactsOfSectionProps) {
  const shown = fields.map((field) => ({ field, words: shownValue(field, values[field.key]) }));
  const known = shown.filter(({ words }) => words !== "");
  const unknown = shown.filter(({ words }) => words === "").map(({ field }) => field.label.toLowerCase());
  return (
    <section>
      <h3>{title}</h3>
      {known.length > 0 && (
        <dl className="fact-list">
          {known.map(({ field, words }) => (
            <div key={field.key}>
              <dt>{field.label}</dt>
              <dd>{words}</dd>
            </div>
          ))}
        </dl>
      )}
      {unknown.length > 0 && <p className="label soft">Not recorded: {unknown.join(", ")}.</p>}
    </section>
  );
}
