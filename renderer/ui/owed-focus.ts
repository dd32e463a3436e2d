let owed = false;

/** After a change of screen the next title that appears takes the focus; not at the first opening of the window. */
export function oweFocus(): void {
  owed = true;
}

export function takeOwedFocus(): boolean {
  const was = owed;
  owed = false;
  return was;
}
