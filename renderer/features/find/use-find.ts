import { useNavigate, useSearch } from "@tanstack/react-router";
import { useCallback, useEffect, useRef, useState } from "react";
import type { InputOf } from "#shared-lib/contract/operations.ts";
import { useRead } from "../../use-read.ts";
import { type FindAddress, filterOf, readFindAddress, writeFindAddress } from "./find-address.ts";

/** Long enough to skip letters of one word, short enough to seem at once. */
const typingPause = 80;
/** Somebody who rests this long has finished the word: then its last word is read, and corrected, as a whole one. */
const settlePause = 500;
/** What one question may hold; the box keeps all of a longer text. */
export const longestText = 20_000;

export interface FindQuestion {
  readonly text: string;
  readonly address: FindAddress;
  readonly setText: (text: string) => void;
  readonly setAddress: (change: Partial<FindAddress>) => void;
  /** Writes the words into the address now: before another screen opens, so that Back finds them. */
  readonly settle: () => void;
  readonly asked: string;
  /** The last word may be unfinished. */
  readonly typing: boolean;
}

/** The words as they are typed, and the address that follows them. */
export function useFindQuestion(): FindQuestion {
  const search = useSearch({ strict: false }) as Record<string, unknown>;
  const address = readFindAddress(search);
  const navigate = useNavigate();
  const [text, setText] = useState(address.q);
  const [asked, setAsked] = useState(address.q);
  const [typing, setTyping] = useState(false);
  const written = useRef(address.q);
  const newest = useRef({ text, address });
  newest.current = { text, address };

  const write = useCallback(
    (next: FindAddress) => {
      written.current = next.q;
      void navigate({ to: "/find", search: writeFindAddress(next), replace: true });
    },
    [navigate],
  );
  const settle = useCallback(() => {
    const { text: words, address: place } = newest.current;
    setAsked(words);
    setTyping(false);
    if (words !== place.q) write({ ...place, q: words });
  }, [write]);

  // Back, Forward and a link to Find change the address by themselves: the box follows.
  useEffect(() => {
    if (address.q === written.current) return;
    written.current = address.q;
    setText(address.q);
    setAsked(address.q);
    setTyping(false);
  }, [address.q]);
  useEffect(() => {
    if (!typing) return;
    const ask = setTimeout(() => setAsked(text), typingPause);
    const rest = setTimeout(settle, settlePause);
    return () => {
      clearTimeout(ask);
      clearTimeout(rest);
    };
  }, [text, typing, settle]);

  return {
    text,
    address,
    asked,
    typing,
    setText: (words) => {
      setTyping(true);
      setText(words);
      if (words.trim() === "") setAsked(words);
    },
    setAddress: (change) => write({ ...address, q: text, ...change }),
    settle,
  };
}

const firstOfEachKind = 5;
export const mostOfOneKind = 200;

/** What is searched for; how many lines of each kind is another matter. */
export function searchInput({ asked, typing, address }: Pick<FindQuestion, "asked" | "typing" | "address">) {
  return {
    text: asked.slice(0, longestText),
    filter: filterOf(address),
    contextLiftId: address.lift,
    keepWords: [...address.keep],
    typing,
  };
}

/** The answer to the question as it stands; the one before it stays until the new one is there. */
export function useFindAnswer({ asked, typing, address }: FindQuestion, allOf: ReadonlySet<string>) {
  const input: InputOf<"search.find"> = {
    ...searchInput({ asked, typing, address }),
    limitPerKind: allOf.size > 0 ? mostOfOneKind : firstOfEachKind,
  };
  return useRead("search.find", input, {
    enabled: asked.trim() !== "",
    keepPrevious: true,
    entities: ["fault note", "recorded fix", "callout", "lift", "site", "check", "visit"],
  });
}
