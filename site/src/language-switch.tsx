// The switch of the language, in the head of the page: each language under its
// own name, so that it is found by those who read no other.
import { Icon } from "./icons";
import { change } from "./language";
import { language, type Language, languages, w } from "./words";

const codes = Object.keys(languages) as Language[];

export function LanguageSwitch() {
  return (
    <span class="language">
      <Icon name="language" />
      <select aria-label={w.language} value={language} onChange={(e) => change(e.currentTarget.value as Language)}>
        {codes.map((l) => <option key={l} value={l} lang={l} selected={l === language}>{languages[l]}</option>)}
      </select>
    </span>
  );
}
