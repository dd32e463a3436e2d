import { useState } from "react";
import type { OutputOf } from "#shared-lib/contract/operations.ts";
import { formatStoredDay } from "#shared-lib/format.ts";
import { Button } from "../../ui/button.tsx";
import { Choice } from "../../ui/choice.tsx";
import { ComboField } from "../../ui/combo-field.tsx";
import { Dialog } from "../../ui/dialog.tsx";
import { SelectField } from "../../ui/select-field.tsx";
import { TextField } from "../../ui/text-field.tsx";
import type { PeriodDays, ReviewAddress } from "./review-address.ts";
import {
  type FilterReading,
  groupChoices,
  type ReviewFilter,
  readFilter,
  readPastDay,
  timeChoices,
} from "./review-filter.ts";
import { lastWords, sentenceCase } from "./review-words.ts";

type Site = OutputOf<"site.list">["sites"][number];

type Problems = Extract<FilterReading, { kind: "problems" }>;

interface FilterDialogProps {
  readonly address: ReviewAddress;
  readonly days: PeriodDays;
  readonly sites: readonly Site[];
  readonly onClose: () => void;
  readonly onTake: (address: ReviewAddress) => void;
}

const mostSites = 60;

/** Time, site and fault group that Review looks at. */
export function FilterDialog({ address, days, sites, onClose, onTake }: FilterDialogProps) {
  const [filter, setFilter] = useState<ReviewFilter>(() => ({
    time: address.from === null ? address.last : "days",
    from: formatStoredDay(days.from),
    until: formatStoredDay(days.until),
    siteText: sites.find(({ id }) => id === address.site)?.name ?? "",
    siteId: sites.some(({ id }) => id === address.site) ? address.site : null,
    group: address.group ?? "any",
  }));
  const [problems, setProblems] = useState<Problems | null>(null);
  const change = (part: Partial<ReviewFilter>): void => setFilter((before) => ({ ...before, ...part }));
  const take = (): void => {
    const reading = readFilter(filter, new Date());
    if (reading.kind === "address") onTake(reading.address);
    else setProblems(reading);
  };
  return (
    <Dialog title="What Review looks at" open onClose={onClose}>
      <form
        className="stack"
        noValidate
        onSubmit={(event) => {
          event.preventDefault();
          take();
        }}
      >
        <TimeFields filter={filter} problems={problems} onChange={change} />
        <SiteField filter={filter} sites={sites} problem={problems?.site} onChange={change} />
        <SelectField
          label="Fault group"
          options={groupChoices.map((id) => ({
            id,
            words: id === "any" ? "All fault groups" : sentenceCase(id),
          }))}
          value={filter.group}
          onChange={(group) => change({ group })}
        />
        <div className="buttons">
          <Button kind="first" type="submit">
            Show
          </Button>
          <Button onPress={onClose}>Cancel</Button>
        </div>
      </form>
    </Dialog>
  );
}

interface TimeFieldsProps {
  readonly filter: ReviewFilter;
  readonly problems: Problems | null;
  readonly onChange: (part: Partial<ReviewFilter>) => void;
}

function TimeFields({ filter, problems, onChange }: TimeFieldsProps) {
  return (
    <>
      <Choice
        label="Time"
        options={timeChoices.map((id) => ({ id, words: id === "days" ? "From and until" : lastWords[id] }))}
        value={filter.time}
        onChange={(time) => onChange({ time })}
      />
      {filter.time === "days" && (
        <div className="fields-two">
          <DayField
            label="First day"
            value={filter.from}
            problem={problems?.from}
            onChange={(from) => onChange({ from })}
          />
          <DayField
            label="Last day"
            value={filter.until}
            problem={problems?.until}
            onChange={(until) => onChange({ until })}
          />
        </div>
      )}
    </>
  );
}

interface DayFieldProps {
  readonly label: string;
  readonly value: string;
  readonly problem: string | undefined;
  readonly onChange: (text: string) => void;
}

function DayField({ label, value, problem, onChange }: DayFieldProps) {
  const day = readPastDay(value, new Date());
  return (
    <TextField
      label={label}
      value={value}
      onChange={onChange}
      hint={day === null ? undefined : `read as ${formatStoredDay(day)}`}
      problem={day === null ? problem : undefined}
    />
  );
}

interface SiteFieldProps {
  readonly filter: ReviewFilter;
  readonly sites: readonly Site[];
  readonly problem: string | undefined;
  readonly onChange: (part: Partial<ReviewFilter>) => void;
}

function SiteField({ filter, sites, problem, onChange }: SiteFieldProps) {
  const { siteText, siteId } = filter;
  const wanted = siteId === null ? siteText.trim().toLowerCase() : "";
  const fitting = sites.filter(({ name, street }) => `${name} ${street}`.toLowerCase().includes(wanted));
  return (
    <ComboField
      label="Site"
      optional
      hint="empty: all sites"
      text={siteText}
      onText={(text) => onChange({ siteText: text })}
      options={fitting.slice(0, mostSites).map(({ id, name, street }) => ({ id, words: name, note: street }))}
      chosenId={siteId}
      onChoose={(option) => onChange({ siteId: option?.id ?? null })}
      empty="No site with these letters"
      problem={siteId === null && siteText.trim() !== "" ? problem : undefined}
    />
  );
}
