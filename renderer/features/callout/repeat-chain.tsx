import { formatDay } from "#shared-lib/format.ts";
import { ordinalWord } from "#shared-lib/ordinal-word.ts";
import { type FaultGroup, repeatWindowDays } from "#shared-lib/words.ts";
import { RepeatArches } from "../../ui/drawings/repeat-arches.tsx";

interface RepeatChainProps {
  readonly group: FaultGroup;
  /** Callouts of the chain before this one, oldest first. */
  readonly earlier: readonly { readonly receivedAt: string }[];
  /** When this one was received; left out while it is still being typed: now. */
  readonly at?: string;
}

const dayMilliseconds = 24 * 60 * 60 * 1000;

/** "Third repeat: doors, each within 30 days", with the arches between the callouts on the lift's line of time. */
export function RepeatChain({ group, earlier, at }: RepeatChainProps) {
  if (earlier.length === 0) return null;
  const last = at === undefined ? Date.now() : Date.parse(at);
  const times = [...earlier.map((one) => Date.parse(one.receivedAt)), last];
  const first = times[0] ?? last;
  const gap = Math.floor((last - (times.at(-2) ?? last)) / dayMilliseconds);
  const margin = Math.max(dayMilliseconds, (last - first) * 0.06);
  return (
    <div>
      <p>
        <b className="pencil">
          {ordinalWord(earlier.length)} repeat: {group},
        </b>{" "}
        each within {repeatWindowDays} days.
      </p>
      <RepeatArches
        label={`Callouts of the group ${group} on this lift`}
        from={first - margin}
        to={last + margin}
        ticks={times.map((time, i) => ({
          at: time,
          words: i === times.length - 1 && at === undefined ? "now" : formatDay(new Date(time)),
        }))}
        rows={[{ id: "chain", title: group, note: `${gap} d since the last`, times, standsOut: true }]}
      />
    </div>
  );
}
