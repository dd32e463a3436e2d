/** "Ctrl Enter" as `aria-keyshortcuts` wants it: "Control+Enter". A sequence of letters has no form there: its last letter. */
export function ariaKeyShortcut(keys: string): string {
  const words = keys.split(" ");
  const isSequence = words.length === 2 && words[0]?.length === 1;
  const shown = isSequence ? words.slice(-1) : words;
  return shown.map((word) => (word === "Ctrl" ? "Control" : word)).join("+");
}
