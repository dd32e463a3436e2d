export interface FormulaPart {
  readonly text: string;
  readonly low: boolean;
}

/** A formula of a definition for typesetting: what follows an underscore stands low, as in "e_up". */
export function formulaParts(text: string): readonly FormulaPart[] {
  return text
    .split(/(_[\p{L}\p{N}]+)/u)
    .filter((piece) => piece !== "")
    .map((piece) =>
      piece.startsWith("_") && piece.length > 1
        ? { text: piece.slice(1), low: true }
        : { text: piece, low: false },
    );
}
