import { useEffect, useRef, useSyncExternalStore } from "react";
import { keyMatches, typesIntoField } from "./key-matching.ts";
import { preference } from "./use-preference.ts";

/** One thing a person can do by key. What has a key is listed under F1 while it can be done. */
export interface Command {
  /** What happens, as on the button: "Save and pass on". */
  readonly name: string;
  /** "N", "F1", "Escape", "Ctrl S", "Ctrl Enter", "Alt G", or two letters one after the other: "G D". */
  readonly keys: string;
  /** Heading under F1; the screen's name, or "Everywhere". */
  readonly group?: string;
  /** False: the key does nothing now and is not listed. */
  readonly when?: boolean;
  /** A command of a dialog works while a dialog is open; all others rest then. */
  readonly inDialog?: boolean;
  readonly run: () => void;
}

export interface ListedCommand {
  readonly name: string;
  readonly keys: string;
  readonly group: string;
}

interface Entry {
  command: Command;
}

/** Newest last; where two share a key the newest wins, because it belongs to the innermost part of the screen. */
const entries: Entry[] = [];
let listed: readonly ListedCommand[] = [];
const listeners = new Set<() => void>();
let prefix: { readonly letter: string; readonly at: number } | undefined;
const prefixMilliseconds = 1500;

function entriesChanged(): void {
  listed = entries
    .filter(({ command }) => command.when !== false)
    .map(({ command }) => ({
      name: command.name,
      keys: command.keys,
      group: command.group ?? "This screen",
    }));
  for (const listener of [...listeners]) listener();
}

/** Registers a command for as long as the component is shown. */
export function useCommand(command: Command): void {
  const entry = useRef<Entry>({ command });
  entry.current.command = command;
  const { name, keys, group, when } = command;
  useEffect(() => {
    const own = entry.current;
    entries.push(own);
    return () => {
      entries.splice(entries.indexOf(own), 1);
      entriesChanged();
    };
  }, []);
  // biome-ignore lint/correctness/useExhaustiveDependencies: the list under F1 shows exactly these facts.
  useEffect(() => {
    entriesChanged();
  }, [name, keys, group, when]);
}

export function useListedCommands(): readonly ListedCommand[] {
  return useSyncExternalStore(
    (listener) => {
      listeners.add(listener);
      return () => {
        listeners.delete(listener);
      };
    },
    () => listed,
  );
}

/** The frame installs this once for the window. Returns the function that takes it away. */
export function listenForCommands(): () => void {
  window.addEventListener("keydown", pressed);
  return () => window.removeEventListener("keydown", pressed);
}

function pressed(event: KeyboardEvent): void {
  if (event.defaultPrevented || event.isComposing || event.repeat) return;
  const before =
    prefix !== undefined && event.timeStamp - prefix.at < prefixMilliseconds ? prefix.letter : undefined;
  prefix = undefined;
  const command = commandFor(event, before);
  if (command !== undefined) {
    event.preventDefault();
    command.run();
  } else if (isPlainLetter(event) && lettersWork(event)) {
    prefix = { letter: event.key, at: event.timeStamp };
  }
}

function commandFor(event: KeyboardEvent, before: string | undefined): Command | undefined {
  const dialogOpen = document.querySelector("[role=dialog],[role=alertdialog]") !== null;
  for (const { command } of [...entries].reverse()) {
    if (command.when === false || (dialogOpen && command.inDialog !== true)) continue;
    if (!keyMatches(command.keys, event, before)) continue;
    if (isPlainLetter(event) && !lettersWork(event)) continue;
    return command;
  }
  return undefined;
}

function isPlainLetter(event: KeyboardEvent): boolean {
  return event.key.length === 1 && !event.ctrlKey && !event.metaKey && !event.altKey;
}

function lettersWork(event: KeyboardEvent): boolean {
  return preference("letterKeys") === "on" && !typesIntoField(event.target);
}
