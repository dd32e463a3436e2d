interface KbdProps {
  /** As registered with useCommand: "Ctrl Enter", "N". */
  readonly keys: string;
}

/** A key in its small frame. Button hides it from readers, who hear `aria-keyshortcuts`. */
export function Kbd({ keys }: KbdProps) {
  return <kbd>{keys}</kbd>;
}
