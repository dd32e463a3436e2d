import type { CauseRanking } from "#shared-lib/contract/cause.ts";
import { formatQuantity } from "#shared-lib/format.ts";
import { Caution } from "../../ui/caution.tsx";
import { repairWords } from "./cause-words.ts";
import { OfferedCheckView } from "./offered-check.tsx";

interface NextCheckProps {
  readonly ranking: CauseRanking;
  readonly onAnswer: ((checkKey: string, outcomeKey: string) => void) | null;
  readonly pending: boolean;
}

/** What to do next: the check that tells most for its time, or the repairs in their order, or what contradicts. */
export function NextCheck({ ranking, onAnswer, pending }: NextCheckProps) {
  const { next, others, contradiction } = ranking;
  return (
    <div className="stack cause-next">
      {contradiction !== null && <p className="strong">{contradiction}</p>}
      {next !== null && (
        <>
          <h3>{next.careful ? "Next check, dangerous work" : "Next check"}</h3>
          {next.careful && (
            <p>No harmless check tells more. Decide with its caution in mind whether this one is worth it.</p>
          )}
          <OfferedCheckView
            key={next.key}
            check={next}
            onAnswer={onAnswer && ((outcome) => onAnswer(next.key, outcome))}
            pending={pending}
            level={4}
          />
        </>
      )}
      {next === null && contradiction === null && <Repairs ranking={ranking} />}
      {others.length > 0 && (
        <details className="cause-others">
          <summary>
            {next === null ? "Checks left" : "Other checks"} ({others.length})
          </summary>
          {others.map((check) => (
            <OfferedCheckView
              key={check.key}
              check={check}
              onAnswer={onAnswer && ((outcome) => onAnswer(check.key, outcome))}
              pending={pending}
              level={4}
            />
          ))}
        </details>
      )}
    </div>
  );
}

/** No check tells more: what to put right, by probability over time. */
function Repairs({ ranking }: { readonly ranking: CauseRanking }) {
  const { repairs, expectedMinutes, causes } = ranking;
  if (repairs.length === 0) return null;
  const causeOf = (key: string) => causes.find((cause) => cause.key === key);
  return (
    <>
      <h3>{repairs.length === 1 ? "Put this right" : "Put right in this order, until it is gone"}</h3>
      <p className="soft label">
        {repairs.length === 1
          ? "One cause is left."
          : `No check tells more. Likeliest for its time first: about ${formatQuantity(Math.round(expectedMinutes), "min")} on average.`}
      </p>
      <ol className="cause-repairs">
        {repairs.map((repair) => {
          const cause = causeOf(repair.causeKey);
          return (
            <li key={repair.causeKey}>
              <b>{repair.title}</b>
              <span className="soft label"> {repairWords(repair)}</span>
              {cause !== undefined && cause.fix !== "" && <p>{cause.fix}</p>}
              {cause !== undefined && cause.caution !== "" && <Caution>{cause.caution}</Caution>}
            </li>
          );
        })}
      </ol>
    </>
  );
}
