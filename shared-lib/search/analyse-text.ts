import { foldWord } from "./fold-word.ts";
import { floorTerm, isFloorWord, isNumber, ordinalOf, ordinalTerm, quantityTerm } from "./number-units.ts";

/**
 * One indexed term of a text. `start` and `end` are offsets into the text as given, for marking. Several tokens may
 * share a `position`: `extra` ones are a second reading of what stands there ("20mm" over "20" and "mm").
 */
export interface Token {
  readonly term: string;
  readonly start: number;
  readonly end: number;
  readonly position: number;
  readonly extra: boolean;
}

interface Piece {
  readonly term: string;
  readonly start: number;
  readonly end: number;
  /** Further readings that begin here, and where they end: past the pieces that follow for "X4:12". */
  readonly wholes: readonly string[];
  readonly wholesEnd: number;
}

// A run of letters and digits, with the signs that hold a terminal marking or a fraction together inside it.
const runs = /[\p{L}\p{N}][\p{L}\p{N}\p{M}]*(?:['’./:,_+#-][\p{L}\p{N}][\p{L}\p{N}\p{M}]*)*/gu;
const joiners = /['’./:,_+#-]/;
const partForm = /[\p{L}\p{N}\p{M}]+/gu;
const hasDigit = /\p{N}/u;
const gluedQuantity = /^(\d+(?:[.,]\d+)?)(\p{L}[\p{L}/]*)$/u;
const lettersAndDigits = /^(\p{L}+)(\d+)(\p{L}*)$/u;
const shortSlashWord = /^\p{L}{1,2}\/\p{L}{1,2}$/u;
const wordLengthLimit = 64;

/**
 * The terms of a text, in order. One analysis for what is stored and what is asked: lower case, folded accents,
 * numbers joined with their units, landings under one term however written, terminal markings and display readings
 * whole and in parts. Text without a letter or digit gives an empty list.
 */
export function analyseText(text: string): Token[] {
  const pieces: Piece[] = [];
  for (const run of text.matchAll(runs)) {
    readRun(run[0], run.index, pieces);
  }
  return joinNeighbours(pieces);
}

function readRun(run: string, start: number, pieces: Piece[]): void {
  const end = start + run.length;
  const folded = foldWord(run);
  if (folded.length > wordLengthLimit) {
    readParts(run, start, pieces);
    return;
  }
  if (!joiners.test(run) && !hasDigit.test(folded)) {
    pieces.push({ term: folded, start, end, wholes: [], wholesEnd: end });
    return;
  }
  if (!hasDigit.test(folded)) {
    readJoinedWords(run, folded, start, pieces);
    return;
  }
  readNumberOrMarking(run, folded, start, pieces);
}

function readJoinedWords(run: string, folded: string, start: number, pieces: Piece[]): void {
  const end = start + run.length;
  if (shortSlashWord.test(folded)) {
    pieces.push({ term: folded, start, end, wholes: [], wholesEnd: end });
    return;
  }
  // "car's" is the car, "doesn't" is one word: an apostrophe never separates.
  const withoutApostrophe = folded.replace(/['’]s$/, "").replace(/['’]/g, "");
  if (!joiners.test(withoutApostrophe)) {
    pieces.push({ term: withoutApostrophe, start, end, wholes: [], wholesEnd: end });
    return;
  }
  readParts(run, start, pieces);
}

function readNumberOrMarking(run: string, folded: string, start: number, pieces: Piece[]): void {
  const end = start + run.length;
  if (isNumber(folded) || ordinalOf(folded) !== undefined) {
    pieces.push({ term: folded, start, end, wholes: [], wholesEnd: end });
    return;
  }
  const glued = gluedQuantity.exec(folded);
  const quantity = glued ? quantityTerm(glued[1] ?? "", glued[2] ?? "") : undefined;
  if (glued && quantity) {
    pieces.push({ term: quantity, start, end, wholes: [glued[1] ?? ""], wholesEnd: end });
    return;
  }
  const marking = lettersAndDigits.exec(folded);
  if (marking) {
    pieces.push({ term: folded, start, end, wholes: [marking[2] ?? ""], wholesEnd: end });
    return;
  }
  const before = pieces.length;
  readParts(run, start, pieces);
  const first = pieces[before];
  if (first && first.term !== folded) {
    const joined = folded.replace(/[^\p{L}\p{N}\p{M}]/gu, "");
    pieces[before] = { ...first, wholes: [folded, joined], wholesEnd: end };
  }
}

function readParts(run: string, start: number, pieces: Piece[]): void {
  for (const part of run.matchAll(partForm)) {
    const partStart = start + part.index;
    const term = foldWord(part[0]).slice(0, wordLengthLimit);
    const end = partStart + part[0].length;
    pieces.push({ term, start: partStart, end, wholes: [], wholesEnd: end });
  }
}

function joinNeighbours(pieces: readonly Piece[]): Token[] {
  const tokens: Token[] = [];
  for (const [position, piece] of pieces.entries()) {
    const { term, start, end } = piece;
    tokens.push({ term, start, end, position, extra: false });
    for (const whole of piece.wholes) {
      tokens.push({ term: whole, start, end: piece.wholesEnd, position, extra: true });
    }
    const ordinal = ordinalOf(term);
    if (ordinal !== undefined && ordinalTerm(ordinal) !== term) {
      tokens.push({ term: ordinalTerm(ordinal), start, end, position, extra: true });
    }
    const next = pieces[position + 1];
    const together = next ? readTogether(piece, next, ordinal) : undefined;
    if (next && together) {
      tokens.push({ term: together, start, end: next.end, position, extra: true });
    }
  }
  return tokens;
}

function readTogether(piece: Piece, next: Piece, ordinal: number | undefined): string | undefined {
  if (isNumber(piece.term)) {
    const quantity = quantityTerm(piece.term, next.term);
    if (quantity) {
      return quantity;
    }
    return isFloorWord(next.term) ? floorTerm(piece.term) : undefined;
  }
  if (ordinal !== undefined) {
    return isFloorWord(next.term) ? floorTerm(ordinal) : undefined;
  }
  if (isFloorWord(piece.term)) {
    return isNumber(next.term) && next.term.length <= 3 ? floorTerm(next.term) : undefined;
  }
  return piece.term === "ground" && isFloorWord(next.term) ? floorTerm("ground") : undefined;
}
