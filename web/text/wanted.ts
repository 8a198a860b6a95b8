// Which language the page is to speak: the reader's choice, else the first of the
// browser's languages that the page has.

// The languages by their own names.
export const languages = { en: "English", de: "Deutsch" } as const;
export type Code = keyof typeof languages;

export const isCode = (s: string): s is Code => Object.hasOwn(languages, s);

// wanted takes what the reader chose, and the browser's languages.
export function wanted(choice: string, browser: readonly string[]): Code {
  if (isCode(choice)) return choice;
  for (const w of browser) {
    const code = w.toLowerCase().split("-")[0] ?? "";
    if (isCode(code)) return code;
  }
  return "en";
}

// scriptOf is where the texts of a language are, those of the first screen or the
// rest; undefined for what is here anyway.
export function scriptOf(code: Code, rest = false): string | undefined {
  const rel = rest ? "steelyard-texts-rest" : "steelyard-texts";
  return document.querySelector<HTMLLinkElement>(`link[rel="${rel}"][hreflang="${code}"]`)?.href;
}
