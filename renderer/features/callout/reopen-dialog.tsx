import { useState } from "react";
import type { Callout } from "#shared-lib/contract/callout.ts";
import { TextField } from "../../ui/text-field.tsx";
import { useWrite } from "../../use-write.ts";
import { StepDialog } from "./step-dialog.tsx";

interface ReopenDialogProps {
  readonly callout: Callout;
  readonly onClose: () => void;
}

export function ReopenDialog({ callout, onClose }: ReopenDialogProps) {
  const [reason, setReason] = useState("");
  const [asked, setAsked] = useState(false);
  const write = useWrite("callout.reopen");
  const isEmpty = reason.trim() === "";
  const save = async () => {
    setAsked(true);
    if (isEmpty) return;
    const result = await write.run({ id: callout.id, version: callout.version, reason });
    if (result.ok) onClose();
  };
  return (
    <StepDialog
      title={`Open ${callout.number} again`}
      saveWord="Open again"
      onClose={onClose}
      onSave={save}
      pending={write.pending}
      error={write.error}
    >
      <TextField
        label="Why"
        value={reason}
        onChange={setReason}
        autoFocus
        problem={asked && isEmpty ? "Say why it is opened again." : undefined}
      />
    </StepDialog>
  );
}
