import type { ReactNode } from "react";
import { Dialog as AriaDialog } from "react-aria-components/Dialog";
import { Heading } from "react-aria-components/Heading";
import { Modal, ModalOverlay } from "react-aria-components/Modal";

interface DialogProps {
  readonly title: string;
  readonly open: boolean;
  readonly onClose: () => void;
  readonly children: ReactNode;
  readonly actions?: ReactNode;
  readonly wide?: boolean;
  /** alertdialog: a question that must be answered; a press outside does not close it. */
  readonly role?: "dialog" | "alertdialog";
}

/** The focus goes in, stays in, and comes back; Escape closes. What was typed inside must be kept by the caller's draft. */
export function Dialog({
  title,
  open,
  onClose,
  children,
  actions,
  wide = false,
  role = "dialog",
}: DialogProps) {
  return (
    <ModalOverlay
      className="dialog-veil"
      isOpen={open}
      onOpenChange={(isOpen) => {
        if (!isOpen) onClose();
      }}
      isDismissable={role === "dialog"}
    >
      <Modal className={wide ? "dialog dialog-wide" : "dialog"}>
        <AriaDialog role={role}>
          <Heading slot="title" level={2}>
            {title}
          </Heading>
          {children}
          {actions !== undefined && <div className="dialog-actions">{actions}</div>}
        </AriaDialog>
      </Modal>
    </ModalOverlay>
  );
}
