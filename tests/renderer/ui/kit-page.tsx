import { type ReactNode, StrictMode, useState } from "react";
import { createRoot } from "react-dom/client";
import "../../../renderer/styles/tokens.css";
import "../../../renderer/styles/base.css";
import "../../../renderer/styles/frame.css";
import "../../../renderer/styles/controls.css";
import "../../../renderer/styles/fields.css";
import "../../../renderer/styles/tables.css";
import "../../../renderer/styles/attention.css";
import "../../../renderer/styles/drawing.css";
import "../../../renderer/styles/print.css";
import "./kit-page.css";
import { SillbookError } from "#shared-lib/errors.ts";
import { BridgeStrip } from "../../../renderer/ui/bridge-strip.tsx";
import { Button } from "../../../renderer/ui/button.tsx";
import { CalloutProgress } from "../../../renderer/ui/callout-progress.tsx";
import { Caution } from "../../../renderer/ui/caution.tsx";
import { ChartFrame } from "../../../renderer/ui/chart-frame.tsx";
import { Checkbox } from "../../../renderer/ui/checkbox.tsx";
import { Choice } from "../../../renderer/ui/choice.tsx";
import { cloudPath } from "../../../renderer/ui/cloud-path.ts";
import { ComboField } from "../../../renderer/ui/combo-field.tsx";
import { ConflictView } from "../../../renderer/ui/conflict-view.tsx";
import { DateTimeField } from "../../../renderer/ui/date-time-field.tsx";
import { Dialog } from "../../../renderer/ui/dialog.tsx";
import { EmptyState } from "../../../renderer/ui/empty-state.tsx";
import { ErrorNote } from "../../../renderer/ui/error-note.tsx";
import { HatchPatterns } from "../../../renderer/ui/hatch-patterns.tsx";
import { Mark, type MarkKind, markWords } from "../../../renderer/ui/mark.tsx";
import { MarkedText } from "../../../renderer/ui/marked-text.tsx";
import { NumberField } from "../../../renderer/ui/number-field.tsx";
import { PageTitle } from "../../../renderer/ui/page-title.tsx";
import { PrintSheet } from "../../../renderer/ui/print-sheet.tsx";
import { RuledTitle } from "../../../renderer/ui/ruled-title.tsx";
import { SavedState } from "../../../renderer/ui/saved-state.tsx";
import { SelectField } from "../../../renderer/ui/select-field.tsx";
import { Table, type TableColumn } from "../../../renderer/ui/table.tsx";
import { TextArea, TextField } from "../../../renderer/ui/text-field.tsx";
import { Timeline, type TimelineItem } from "../../../renderer/ui/timeline.tsx";
import { TriangleShape } from "../../../renderer/ui/triangle-number.tsx";
import { VirtualList } from "../../../renderer/ui/virtual-list.tsx";
import { type VirtualColumn, VirtualTable } from "../../../renderer/ui/virtual-table.tsx";

/** What the test reads back: the newest value each control reported. */
function Told({ name, children }: { readonly name: string; readonly children: ReactNode }) {
  return <output data-told={name}>{children}</output>;
}

function Fields() {
  const [words, setWords] = useState("doors keep reopening at the lobby");
  const [length, setLength] = useState<{ text: string; number: number | null }>({ text: "3.0", number: 3 });
  const [moment, setMoment] = useState<{ text: string; at: string | null }>({ text: "", at: null });
  const [inside, setInside] = useState<"nobody" | "people" | null>(null);
  const [group, setGroup] = useState<"doors" | "brake" | null>(null);
  const [compared, setCompared] = useState(false);
  return (
    <section className="stack">
      <RuledTitle count="7">Fields</RuledTitle>
      <TextField label="Caller" value={words} onChange={setWords} hint="as on the phone" optional />
      <TextField
        label="Terminals"
        marking
        value="34–35"
        onChange={() => undefined}
        problem="These terminals are on no drawing of this lift."
      />
      <TextArea label="What the caller says" value={words} onChange={setWords} />
      <NumberField
        label="Magnet length"
        unit="mm"
        value={length.text}
        onChange={(text, number) => setLength({ text, number })}
        from="from the site’s drawing"
      />
      <Told name="length">{String(length.number)}</Told>
      <DateTimeField label="Arrived" value={moment.text} onChange={(text, at) => setMoment({ text, at })} />
      <Told name="moment">{String(moment.at)}</Told>
      <Choice
        label="Anyone inside?"
        value={inside}
        onChange={setInside}
        options={[
          { id: "nobody", words: "Nobody" },
          { id: "people", words: "People inside", mark: "person inside" },
        ]}
      />
      <Told name="inside">{String(inside)}</Told>
      <SelectField
        label="Fault group"
        value={group}
        onChange={setGroup}
        options={[
          { id: "doors", words: "doors" },
          { id: "brake", words: "brake", note: "holds the car" },
        ]}
      />
      <Told name="group">{String(group)}</Told>
      <LiftField />
      <Checkbox checked={compared} onChange={setCompared}>
        I compared the register with the shaft
      </Checkbox>
    </section>
  );
}

const lifts = ["Saltpan Court, Lift 1", "Saltpan Court, Lift 2", "Kittiwake House, Lift 2"];

function LiftField() {
  const [text, setText] = useState("");
  const [chosen, setChosen] = useState<string | null>(null);
  const options = lifts
    .filter((words) => words.toLowerCase().includes(text.toLowerCase()))
    .map((words) => ({ id: words.replaceAll(/\W/g, ""), words, note: "6 landings" }));
  return (
    <>
      <ComboField
        label="Which lift"
        text={text}
        onText={setText}
        options={options}
        chosenId={chosen}
        onChoose={(option) => setChosen(option?.id ?? null)}
        freeText
      />
      <Told name="lift">{`${chosen ?? "none"}: ${text}`}</Told>
    </>
  );
}

function Pressing() {
  const [open, setOpen] = useState(false);
  const [pressed, setPressed] = useState(0);
  return (
    <section className="stack">
      <RuledTitle number={1}>Pressing and saying</RuledTitle>
      <div className="buttons">
        <Button kind="first" keys="Ctrl Enter" onPress={() => setPressed(pressed + 1)}>
          Save and pass on
        </Button>
        <Button keys="Ctrl S" mark="calculator">
          Save
        </Button>
        <Button kind="act">Record removal</Button>
        <Button kind="quiet" onPress={() => setOpen(true)}>
          Open the question
        </Button>
        <Button disabled>Not now</Button>
      </div>
      <Told name="pressed">{pressed}</Told>
      <Dialog
        title="Give up what was typed?"
        open={open}
        onClose={() => setOpen(false)}
        role="alertdialog"
        actions={<Button onPress={() => setOpen(false)}>Keep it</Button>}
      >
        <p>The draft of 10:41 is dropped.</p>
      </Dialog>
      <ul className="stack" aria-label="Marks">
        {(Object.keys(markWords) as MarkKind[]).map((kind) => (
          <li key={kind}>
            <Mark kind={kind} pencil={kind === "stepped"} />
          </li>
        ))}
      </ul>
      <SavedState kind="saved" at="2026-11-17T10:42:00Z" />
      <SavedState kind="not saved yet" before="A-0613" keptAt="2026-11-17T10:41:00Z" />
      <SavedState kind="not saved" reason="Not saved: the disk is full. What you typed is kept here." />
      <Caution>Inspection control while it moves; lock off before you touch.</Caution>
      <EmptyState action={<Button>Log a callout</Button>}>Open callouts will stand here.</EmptyState>
      <ErrorNote
        error={
          new SillbookError("input-invalid", undefined, {
            fields: [{ path: ["at"], message: "An event cannot be before the call at 08:52." }],
          })
        }
        fieldWords={() => "Time"}
        onRetry={() => undefined}
      />
      <ConflictView
        changedBy="Ines Calder, 10:41"
        fields={[{ label: "Access", mine: "Key at no. 4", theirs: "Key at no. 6" }]}
        onSaveMine={() => undefined}
        onTakeTheirs={() => undefined}
      />
    </section>
  );
}

interface Wait {
  readonly lift: string;
  readonly minutes: number;
}
const waits: readonly Wait[] = [
  { lift: "Net Loft Studios, Lift 1", minutes: 6 },
  { lift: "Kittiwake House, Lift 2", minutes: 110 },
  { lift: "Limekiln Mill, Goods lift", minutes: 12 },
];
const waitColumns: readonly TableColumn<Wait>[] = [
  { id: "lift", head: "Lift", cell: (row) => row.lift, rowHead: true },
  {
    id: "wait",
    head: "Waiting",
    number: true,
    cell: (row) => `${row.minutes} min`,
    sortBy: (row) => row.minutes,
    sortWords: { rising: "shortest first", falling: "longest first" },
  },
];
const many = Array.from({ length: 10_000 }, (_, i) => ({ lift: `Lift ${i}`, minutes: i }));
const manyColumns: readonly VirtualColumn<Wait>[] = [
  { id: "lift", head: "Lift", width: "minmax(0, 1fr)", cell: (row) => row.lift },
  { id: "wait", head: "Waiting", width: "8rem", number: true, cell: (row) => `${row.minutes} min` },
];

function Lists() {
  return (
    <section className="stack">
      <RuledTitle>Lists and drawings</RuledTitle>
      <Pictures />
      <Table label="Open callouts" columns={waitColumns} rows={waits} rowKey={(row) => row.lift} />
      <LongLists />
    </section>
  );
}

const events: readonly TimelineItem[] = [
  {
    id: "2",
    at: "2026-11-17T10:05:00Z",
    mark: "bridge",
    pencil: true,
    words: "Bridge B-07 set. Ines Calder",
  },
  {
    id: "1",
    at: "2026-11-17T09:50:00Z",
    mark: "arrived",
    words: "On site. Ines Calder",
    after: "12 min after the call",
    corrected: { from: "09:55", by: "Orla Vance" },
  },
];

function Pictures() {
  return (
    <>
      <BridgeStrip
        number={2}
        across="the landing 6 door contact"
        terminals="34–35"
        since="10:05"
        by="Ines Calder"
        chain={["stops", "governor", "6", "7"]}
        bridgedAt={2}
        action={<Button kind="act">Record removal</Button>}
      />
      <p>
        <MarkedText
          text="Zone signals arrive in reversed order"
          ranges={[
            { start: 0, end: 12 },
            { start: 23, end: 31 },
          ]}
        />
      </p>
      <CalloutProgress
        steps={["received", "passed on", "arrived", "made safe", "back in service", "closed"]}
        made={2}
      />
      <Timeline label="Timeline" items={events} />
      <ChartFrame
        title="3 callouts, one of them waits longest"
        caption="Cloud: what needs a person."
        fileName="waits"
        table={<Table label="Waits" columns={waitColumns} rows={waits} rowKey={(row) => row.lift} />}
      >
        <svg
          className="drawing"
          width="200"
          height="80"
          viewBox="0 0 200 80"
          role="img"
          aria-label="A cloud, number 1"
        >
          <rect className="fill-hatch" x="10" y="10" width="30" height="60" />
          <path className="pen-pencil" d={cloudPath({ x: 80, y: 20, width: 60, height: 40 })} />
          <TriangleShape number={1} x={165} y={50} />
        </svg>
      </ChartFrame>
    </>
  );
}

function LongLists() {
  const [listAt, setListAt] = useState(-1);
  const [tableAt, setTableAt] = useState(-1);
  const [opened, setOpened] = useState("nothing");
  return (
    <>
      <div className="kit-height">
        <VirtualList
          label="Many lifts"
          items={many}
          itemKey={(item) => item.lift}
          renderItem={(item) => item.lift}
          current={listAt}
          onCurrent={setListAt}
          onOpen={(item) => setOpened(item.lift)}
          className="kit-height"
        />
      </div>
      <VirtualTable
        label="Many waits"
        columns={manyColumns}
        rows={many}
        rowKey={(row) => row.lift}
        current={tableAt}
        onCurrent={setTableAt}
        onOpen={(row) => setOpened(`row of ${row.lift}`)}
        className="kit-height"
      />
      <Told name="opened">{opened}</Told>
    </>
  );
}

function KitPage() {
  return (
    <main className="sheet">
      <HatchPatterns />
      <PageTitle title="Kit" />
      <div className="kit-columns">
        <Fields />
        <Pressing />
        <Lists />
      </div>
      <PrintSheet
        title="Callout slip"
        company="Marram Lift Care"
        date="17 Nov 2026"
        who="Orla Vance"
        page="1 of 1"
      >
        <p>One page.</p>
      </PrintSheet>
    </main>
  );
}

const place = document.getElementById("program");
if (place === null) throw new Error("The page has no element with the id program.");
createRoot(place).render(
  <StrictMode>
    <KitPage />
  </StrictMode>,
);
