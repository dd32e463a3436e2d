import { Choice } from "../../ui/choice.tsx";
import { RuledTitle } from "../../ui/ruled-title.tsx";
import { usePreference } from "../../use-preference.ts";

export function LookSection() {
  const [theme, chooseTheme] = usePreference("theme");
  const [letterKeys, chooseLetterKeys] = usePreference("letterKeys");
  return (
    <section className="stack">
      <RuledTitle>Look and keys</RuledTitle>
      <Choice
        label="Light or dark"
        value={theme}
        onChange={chooseTheme}
        options={[
          { id: "system", words: "As the system" },
          { id: "light", words: "Light" },
          { id: "dark", words: "Dark" },
        ]}
      />
      <Choice
        label="Single letters press commands"
        hint="outside fields only; F1 lists all keys"
        value={letterKeys}
        onChange={chooseLetterKeys}
        options={[
          { id: "on", words: "On" },
          { id: "off", words: "Off" },
        ]}
      />
    </section>
  );
}
