/** What of a keyboard event decides which command was meant. */
export interface PressedKey {
  readonly key: string;
  readonly code: string;
  readonly ctrlKey: boolean;
  readonly metaKey: boolean;
  readonly altKey: boolean;
}

/**
 * Whether `pressed`, with the plain letter `before` pressed just before it, is the combination written `keys`
 * ("N", "Ctrl S", "Alt G", "G D"). Ctrl also means the command key of a Mac keyboard. With Alt the key's place counts,
 * because Alt changes the letter on some keyboards.
 */
export function keyMatches(keys: string, pressed: PressedKey, before: string | undefined): boolean {
  const words = keys.split(" ");
  const last = words.at(-1);
  if (last === undefined) return false;
  const control = words.includes("Ctrl");
  const alt = words.includes("Alt");
  if (control !== (pressed.ctrlKey || pressed.metaKey) || alt !== pressed.altKey) return false;
  const [first] = words;
  const isSequence = words.length === 2 && first?.length === 1;
  if (isSequence && before?.toLowerCase() !== first?.toLowerCase()) return false;
  if (pressed.key.toLowerCase() === last.toLowerCase()) return true;
  return alt && pressed.code.toLowerCase() === `key${last.toLowerCase()}`;
}

const textInputTypes = [
  "text",
  "search",
  "tel",
  "url",
  "email",
  "number",
  "password",
  "date",
  "time",
  "datetime-local",
];

/** Letters pressed here are typing, not commands. A list or menu uses letters to jump to an entry. */
export function typesIntoField(target: EventTarget | null): boolean {
  if (!(target instanceof Element)) return false;
  if (target instanceof HTMLInputElement) return textInputTypes.includes(target.type);
  return (
    target instanceof HTMLTextAreaElement ||
    target instanceof HTMLSelectElement ||
    (target instanceof HTMLElement && target.isContentEditable) ||
    target.closest("[role=menu],[role=combobox]") !== null
  );
}
