/** For parts of a drawing that its label or its rows already say: painted, not read out a second time. */
export const unread = { "aria-hidden": true } as const;
