import { useMemo, useState } from "react";
import { Button } from "react-aria-components/Button";
import type { LiftLine } from "#shared-lib/contract/lift.ts";
import { ariaKeyShortcut } from "../../ui/aria-key-shortcut.ts";
import { ComboField } from "../../ui/combo-field.tsx";
import { Kbd } from "../../ui/kbd.tsx";
import { useCommand } from "../../use-command.ts";
import { useDebounced } from "../../use-debounced.ts";
import { useRead } from "../../use-read.ts";

interface WhichLiftProps {
  readonly text: string;
  readonly liftId: string | null;
  readonly onText: (text: string) => void;
  readonly onLift: (id: string | null) => void;
  /** The chosen lift, where it is known already. */
  readonly lift: LiftLine | null;
  readonly problem: string | undefined;
  readonly disabled: boolean;
}

/** A lift by parts of site, street, name, plate or a caller's number; words that are on no list may stay. */
export function WhichLift(props: WhichLiftProps) {
  const { text, liftId, onText, onLift, lift } = props;
  const [left, setLeft] = useState(true);
  const asked = useDebounced(text, 80);
  const found = useRead("lift.lookUp", { text: asked }, { keepPrevious: true, entities: ["lift", "site"] });
  const options = useMemo(
    () =>
      (found.value?.lifts ?? []).map((one) => ({
        id: one.id,
        words: one.title,
        note: [
          one.street,
          one.state === "in service" ? "" : one.state,
          one.because && `found by ${one.because}`,
        ]
          .filter((part) => part !== "")
          .join(" · "),
      })),
    [found.value],
  );
  const others = useOtherLifts(lift);
  const chooseOther = (other: LiftLine) => {
    onText(other.title);
    onLift(other.id);
  };
  const isFree = left && liftId === null && text.trim() !== "";
  return (
    <div className="stack which-lift">
      <ComboField
        label="Which lift"
        freeText
        text={text}
        onText={(next) => {
          setLeft(false);
          onText(next);
        }}
        options={options}
        chosenId={liftId}
        onChoose={(option) => onLift(option?.id ?? null)}
        problem={props.problem}
        disabled={props.disabled}
        onBlur={() => setLeft(true)}
        hint={lift === null ? undefined : liftFacts(lift)}
        hintWideOnly
        {...(lift === null || others.length > mostInside
          ? {}
          : { aside: <OtherLifts others={others} onChoose={chooseOther} /> })}
      />
      {isFree && (
        <p className="soft label">
          No lift chosen: “{text.trim()}” is kept in these words, and which lift it is can be settled later.
        </p>
      )}
      {others.length > mostInside && <OtherLifts others={others} onChoose={chooseOther} />}
    </div>
  );
}

/** "6 landings · geared traction · centre-opening doors · Tern" */
export function liftFacts(lift: LiftLine): string {
  return [
    lift.landingCount > 0 ? `${lift.landingCount} landings` : "",
    lift.driveKind ?? "",
    lift.doorKind === null ? "" : `${lift.doorKind} doors`,
    lift.controllerFamily,
  ]
    .filter((part) => part !== "")
    .join(" · ");
}

/** So many stand inside the field; more of them stand below it. */
const mostInside = 2;
const mostOthers = 6;

interface NumberedLift {
  readonly lift: LiftLine;
  readonly keys: string;
}

/** The other lifts of the site, one key each: callers name the house first and the lift last. */
function useOtherLifts(lift: LiftLine | null): readonly NumberedLift[] {
  const all = useRead("lift.list", {}, { entities: ["lift", "site"], enabled: lift !== null });
  if (lift === null) return [];
  return (all.value?.lifts ?? [])
    .filter((one) => one.siteId === lift.siteId)
    .slice(0, mostOthers)
    .map((one, i) => ({ lift: one, keys: `Alt ${i + 1}` }))
    .filter((one) => one.lift.id !== lift.id);
}

interface OtherLiftsProps {
  readonly others: readonly NumberedLift[];
  readonly onChoose: (lift: LiftLine) => void;
}

function OtherLifts({ others, onChoose }: OtherLiftsProps) {
  if (others.length === 0) return null;
  return (
    <span className="row other-lifts">
      <span className="soft">also</span>
      {others.map(({ lift, keys }) => (
        <OtherLift key={lift.id} lift={lift} keys={keys} onChoose={() => onChoose(lift)} />
      ))}
    </span>
  );
}

interface OtherLiftProps {
  readonly lift: LiftLine;
  readonly keys: string;
  readonly onChoose: () => void;
}

function OtherLift({ lift, keys, onChoose }: OtherLiftProps) {
  useCommand({ name: `Choose ${lift.name} instead`, keys, group: "Desk", run: onChoose });
  return (
    // Reached by its key, so that Tab goes from one question of the call straight to the next.
    <Button
      className="button button-quiet"
      aria-keyshortcuts={ariaKeyShortcut(keys)}
      excludeFromTabOrder
      onPress={onChoose}
    >
      <span className="button-word">{lift.name}</span>
      <span aria-hidden="true">
        <Kbd keys={keys} />
      </span>
    </Button>
  );
}
