import { Button } from "../../ui/button.tsx";
import { EmptyState } from "../../ui/empty-state.tsx";
import { PlaceLink } from "./place-link.tsx";

interface NothingFoundProps {
  readonly advice: string;
  readonly words: string;
  readonly filtered: boolean;
  readonly onWithoutFilters: () => void;
}

/** A symptom of a new note must say something; a number or two letters do not. */
const saysSomething = /\p{L}{3,}/u;
const longestSymptom = 1500;

export function NothingFound({ advice, words, filtered, onWithoutFilters }: NothingFoundProps) {
  return (
    <EmptyState
      action={
        <div className="buttons">
          {filtered && <Button onPress={onWithoutFilters}>Take all filters away</Button>}
          {saysSomething.test(words) && (
            <PlaceLink
              place={{ to: "/note/new", search: { said: words.trim().slice(0, longestSymptom) } }}
              kind={filtered ? "quiet" : "plain"}
            >
              Write a new fault note from these words
            </PlaceLink>
          )}
        </div>
      }
    >
      {advice}
    </EmptyState>
  );
}
