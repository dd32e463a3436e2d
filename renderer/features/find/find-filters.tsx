import { useMemo, useState } from "react";
import type { LiftLine } from "#shared-lib/contract/lift.ts";
import { formatStoredDay } from "#shared-lib/format.ts";
import { driveKinds, faultGroups } from "#shared-lib/words.ts";
import { useRead } from "../../use-read.ts";
import { sentenceCase } from "../fault-note/note-words.ts";
import { FilterWord } from "./filter-word.tsx";
import type { FindAddress } from "./find-address.ts";
import { sinceDays } from "./since-days.ts";

interface FindFiltersProps {
  readonly lifts: readonly LiftLine[];
  readonly address: FindAddress;
  readonly onChange: (change: Partial<FindAddress>) => void;
}

const driveOptions = driveKinds.map((kind) => ({ id: kind, words: sentenceCase(kind) }));
const groupOptions = faultGroups.map((group) => ({ id: group, words: sentenceCase(group) }));

/** The filters as words to the right of the search box. */
export function FindFilters({ lifts, address, onChange }: FindFiltersProps) {
  const { sites } = useRead("site.list", {}, { entities: ["site"] }).value ?? { sites: [] };
  const siteOptions = useMemo(
    () => sites.map(({ id, name, street }) => ({ id, words: name, note: street })),
    [sites],
  );
  const families = useMemo(
    () => [...new Set(lifts.map((lift) => lift.controllerFamily))].filter((name) => name !== "").sort(),
    [lifts],
  );
  const { site, controller, drive, group, since } = address;
  const days = sinceDays(new Date());
  return (
    <div className="find-filters">
      <LiftWord lifts={lifts} address={address} onChange={onChange} />
      <FilterWord
        what="site"
        none="Any site"
        options={siteOptions}
        chosenId={site}
        onChoose={(id) => onChange({ site: id })}
      />
      <FilterWord
        what="controller family"
        none="Any controller"
        options={families.map((name) => ({ id: name, words: name }))}
        chosenId={controller}
        chosenWords={controller ?? undefined}
        onChoose={(id) => onChange({ controller: id })}
      />
      <FilterWord
        what="drive"
        none="Any drive"
        options={driveOptions}
        chosenId={drive}
        onChoose={(id) => onChange({ drive: driveKinds.find((kind) => kind === id) ?? null })}
      />
      <FilterWord
        what="fault group"
        none="Any group"
        options={groupOptions}
        chosenId={group}
        onChoose={(id) => onChange({ group: faultGroups.find((one) => one === id) ?? null })}
      />
      <FilterWord
        what="date"
        none="Any date"
        options={days}
        chosenId={since}
        chosenWords={since === null ? undefined : `Since ${formatStoredDay(since)}`}
        onChoose={(id) => onChange({ since: id })}
      />
    </div>
  );
}

/** The lift in whose context is searched: its own records and its controller family come first. */
function LiftWord({ lifts, address, onChange }: FindFiltersProps) {
  const [typed, setTyped] = useState("");
  const looked = useRead(
    "lift.lookUp",
    { text: typed, limit: 30 },
    { keepPrevious: true, enabled: typed.trim() !== "" },
  ).value;
  const chosen = lifts.find((lift) => lift.id === address.lift);
  const shown = typed.trim() === "" ? lifts : (looked?.lifts ?? []);
  const options = shown.map(({ id, title, controllerFamily, street }) => ({
    id,
    words: title,
    note: [street, controllerFamily].filter((part) => part !== "").join(" · "),
  }));
  return (
    <FilterWord
      what="lift"
      none="No lift chosen"
      options={options}
      chosenId={address.lift}
      chosenWords={chosen === undefined ? "Lift not found" : chosen.title}
      onType={setTyped}
      onChoose={(lift) => {
        setTyped("");
        onChange({ lift, ...(lift === null ? { only: false } : {}) });
      }}
    />
  );
}
