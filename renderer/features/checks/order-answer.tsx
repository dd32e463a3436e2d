import { Button } from "../../ui/button.tsx";
import { useCommand } from "../../use-command.ts";
import { BigAnswer } from "./big-answer.tsx";
import { orderChoices } from "./order-panels.ts";
import type { AnswerProps } from "./step-answers.tsx";

interface OrderAnswerProps extends AnswerProps {
  readonly order: readonly string[];
}

/** As many as one run past a landing can bring with every fault; the contract takes no more. */
const longest = 20;

/** Press the signals in the order in which they were seen; undo takes the last one back. */
export function OrderAnswer({ step, entry, disabled, onChange, onRecord, order }: OrderAnswerProps) {
  const pressed = entry.order ?? [];
  const recorded = step.found?.kind === "order" ? step.found.order : null;
  const full = pressed.length >= longest;
  const undo = () => onChange({ order: pressed.slice(0, -1) });
  const send = () => onRecord({ kind: "order", order: [...pressed] });
  useCommand({
    name: "Undo the last signal",
    keys: "U",
    group: "Signal check",
    when: pressed.length > 0,
    run: undo,
  });
  useCommand({
    name: "Record this order",
    keys: "R",
    group: "Signal check",
    when: pressed.length > 0 && !disabled,
    run: send,
  });
  return (
    <>
      <fieldset className="check-answers">
        <legend className="check-question">Press them in the order seen</legend>
        {orderChoices(order).map((signal, i) => (
          <BigAnswer
            key={signal}
            keys={String(i + 1)}
            name={`Seen: ${signal}`}
            disabled={disabled || full}
            onPress={() => onChange({ order: [...pressed, signal] })}
          >
            {signal}
          </BigAnswer>
        ))}
      </fieldset>
      <OrderShown pressed={entry.order} recorded={recorded} />
      {full && (
        <p className="label">
          More than {longest} edges in one run: record these and write the rest in the note.
        </p>
      )}
      <div className="buttons">
        {pressed.length > 0 ? (
          <>
            <Button kind="first" keys="R" onPress={send} disabled={disabled}>
              Record this order
            </Button>
            <Button keys="U" onPress={undo}>
              Undo
            </Button>
          </>
        ) : (
          <Button onPress={() => onRecord({ kind: "order", order: [] })} disabled={disabled}>
            Nothing came
          </Button>
        )}
      </div>
    </>
  );
}

interface OrderShownProps {
  readonly pressed: readonly string[] | undefined;
  readonly recorded: readonly string[] | null;
}

/** What was pressed so far; else what stands recorded. */
function OrderShown({ pressed, recorded }: OrderShownProps) {
  const shown = pressed ?? recorded ?? [];
  return (
    <ol
      className="check-order"
      aria-label={pressed === undefined ? "Recorded order" : "Order seen"}
      aria-live="polite"
    >
      {shown.map((signal, i) => (
        // biome-ignore lint/suspicious/noArrayIndexKey: the same signal may come twice, its place is what it is.
        <li key={i}>
          <span className="soft">{i + 1}</span> {signal}
        </li>
      ))}
      {shown.length === 0 && (
        <li className="soft">
          {recorded === null || pressed !== undefined ? "nothing pressed yet" : "nothing came"}
        </li>
      )}
    </ol>
  );
}
