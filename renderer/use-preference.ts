import { useCallback, useSyncExternalStore } from "react";

/** Choices of one person at one machine that concern only how the program is shown and pressed. */
export interface Preferences {
  readonly theme: "system" | "light" | "dark";
  /** Single letters press commands outside fields. Some people's aids type letters by themselves. */
  readonly letterKeys: "on" | "off";
}

const defaults: Preferences = { theme: "system", letterKeys: "on" };
const allowed: { readonly [Name in keyof Preferences]: readonly Preferences[Name][] } = {
  theme: ["system", "light", "dark"],
  letterKeys: ["on", "off"],
};
const storageName = "sillbook.preferences";

let preferences: Preferences = load();
const listeners = new Set<() => void>();

function load(): Preferences {
  try {
    const stored: unknown = JSON.parse(localStorage.getItem(storageName) ?? "{}");
    const found = typeof stored === "object" && stored !== null ? (stored as Partial<Preferences>) : {};
    return {
      theme: allowed.theme.find((word) => word === found.theme) ?? defaults.theme,
      letterKeys: allowed.letterKeys.find((word) => word === found.letterKeys) ?? defaults.letterKeys,
    };
  } catch {
    return defaults;
  }
}

function subscribe(listener: () => void): () => void {
  listeners.add(listener);
  return () => {
    listeners.delete(listener);
  };
}

export function preference<Name extends keyof Preferences>(name: Name): Preferences[Name] {
  return preferences[name];
}

/** Puts the chosen theme on the root element; without a choice the system decides (tokens.css). */
export function showTheme(): void {
  if (preferences.theme === "system") delete document.documentElement.dataset.theme;
  else document.documentElement.dataset.theme = preferences.theme;
}

export function usePreference<Name extends keyof Preferences>(
  name: Name,
): readonly [Preferences[Name], (next: Preferences[Name]) => void] {
  const value = useSyncExternalStore(subscribe, () => preferences[name]);
  const choose = useCallback(
    (next: Preferences[Name]) => {
      preferences = { ...preferences, [name]: next };
      try {
        localStorage.setItem(storageName, JSON.stringify(preferences));
      } catch {
        // A browser may forbid storage; the choice then holds for this window.
      }
      showTheme();
      for (const listener of [...listeners]) listener();
    },
    [name],
  );
  return [value, choose];
}
