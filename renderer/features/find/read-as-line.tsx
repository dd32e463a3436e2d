import type { OutputOf } from "#shared-lib/contract/operations.ts";
import { Button } from "../../ui/button.tsx";

interface ReadAsLineProps {
  readonly answer: OutputOf<"search.find">;
  /** Words that are taken as typed now, and may be corrected again. */
  readonly kept: readonly string[];
  readonly onKeep: (word: string) => void;
  readonly onCorrectAgain: (word: string) => void;
  readonly shortened: boolean;
}

/** What else the words were read as, and every correction with the way back. */
export function ReadAsLine({ answer, kept, onKeep, onCorrectAgain, shortened }: ReadAsLineProps) {
  const { alsoReadAs, corrections, warming } = answer;
  return (
    <div className="find-read-as">
      {alsoReadAs.length > 0 && <span>Also read as: {alsoReadAs.join(", ")}.</span>}
      {corrections.map(({ typed, readAs }) => (
        <span key={typed} className="find-correction">
          “{typed}” read as “{readAs}”.{" "}
          <Button kind="quiet" onPress={() => onKeep(typed)} label={`Take “${typed}” as typed`}>
            Take it as typed
          </Button>
        </span>
      ))}
      {kept.map((word) => (
        <span key={word} className="find-correction">
          “{word}” taken as typed.{" "}
          <Button kind="quiet" onPress={() => onCorrectAgain(word)} label={`Let “${word}” be corrected`}>
            Correct it
          </Button>
        </span>
      ))}
      {shortened && <span>Only the first 20,000 characters are searched.</span>}
      {warming && (
        <span>The index is still being built; results may be in a rougher order for a moment.</span>
      )}
    </div>
  );
}
