import { Button } from "../../ui/button.tsx";
import { SelectField } from "../../ui/select-field.tsx";
import { TextField } from "../../ui/text-field.tsx";
import { useCommand } from "../../use-command.ts";
import { useRead } from "../../use-read.ts";
import type { NewCalloutDraft } from "./new-callout-draft.ts";

interface MoreFieldsProps {
  readonly draft: NewCalloutDraft;
  readonly change: (part: Partial<NewCalloutDraft>) => void;
  readonly disabled: boolean;
}

/** Landing and display reading: seldom known on the telephone, so they are folded away. */
export function MoreFields({ draft, change, disabled }: MoreFieldsProps) {
  const isOpen = isUnfolded(draft);
  useCommand({
    name: "Landing and display reading",
    keys: "Alt M",
    group: "Desk",
    when: !isOpen,
    run: () => change({ unfolded: true }),
  });
  if (!isOpen) return null;
  return (
    <div className="fields-two">
      <LandingField liftId={draft.liftId} value={draft.landingId} change={change} />
      <TextField
        label="Display reading"
        optional
        hint="as it stands there"
        hintWideOnly
        marking
        value={draft.displayReading}
        onChange={(displayReading) => change({ displayReading })}
        disabled={disabled}
      />
    </div>
  );
}

/** The words that unfold it stand beside the buttons and cost no line of their own. */
export function MoreFold({ draft, change }: Pick<MoreFieldsProps, "draft" | "change">) {
  if (isUnfolded(draft)) return null;
  return (
    <Button
      kind="quiet"
      keys="Alt M"
      label="More: landing and display reading"
      expanded={false}
      onPress={() => change({ unfolded: true })}
    >
      More
    </Button>
  );
}

function isUnfolded(draft: NewCalloutDraft): boolean {
  return draft.unfolded || draft.displayReading !== "" || draft.landingId !== null;
}

interface LandingFieldProps {
  readonly liftId: string | null;
  readonly value: string | null;
  readonly change: MoreFieldsProps["change"];
}

const noLanding = "none";

function LandingField({ liftId, value, change }: LandingFieldProps) {
  const found = useRead(
    "lift.find",
    { id: liftId ?? "" },
    { enabled: liftId !== null, entities: ["landing"] },
  );
  const landings = [...(found.value?.landings ?? [])].sort((a, b) => a.level - b.level);
  return (
    <SelectField
      label="Landing"
      optional
      options={[
        { id: noLanding, words: "No landing named" },
        ...landings.map((one) => ({
          id: one.id,
          words: [one.marking, one.name].filter(Boolean).join(" · "),
        })),
      ]}
      value={value ?? noLanding}
      onChange={(id) => change({ landingId: id === noLanding ? null : id })}
      disabled={liftId === null}
    />
  );
}
