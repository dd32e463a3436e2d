/** What can be asked of a lift from its header; each opens its own dialog. */
export const liftDialogs = ["state", "visit", "bridge", "danger"] as const;
export type LiftDialog = (typeof liftDialogs)[number];
