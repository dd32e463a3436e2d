import type { ReactNode } from "react";
import type { SillbookError } from "#shared-lib/errors.ts";
import { Button } from "../../ui/button.tsx";
import { Dialog } from "../../ui/dialog.tsx";
import { Refused } from "./way-out.tsx";

interface StepDialogProps {
  readonly title: string;
  readonly saveWord: string;
  readonly onClose: () => void;
  readonly onSave: () => Promise<void>;
  readonly pending: boolean;
  readonly error: SillbookError | undefined;
  readonly children: ReactNode;
}

/** A short form in a dialog: Enter saves, Escape leaves and keeps what was typed as a draft. */
export function StepDialog({ title, saveWord, onClose, onSave, pending, error, children }: StepDialogProps) {
  return (
    <Dialog title={title} open onClose={onClose}>
      <form
        className="stack"
        noValidate
        onSubmit={(event) => {
          event.preventDefault();
          void onSave();
        }}
      >
        {children}
        <Refused error={error} />
        <div className="dialog-actions">
          <Button kind="first" type="submit" keys="Enter" pending={pending}>
            {saveWord}
          </Button>
          <Button kind="quiet" onPress={onClose}>
            Cancel
          </Button>
        </div>
      </form>
    </Dialog>
  );
}
