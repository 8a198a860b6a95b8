// The language of the page: the reader's choice, else the first of the
// browser's languages that the page has. It changes at once; nothing is loaded
// anew but the texts, and the document stays as it is.

import { core } from "../core/core.ts";
import { readPreference, writePreference } from "../io/storage.ts";
import { store } from "./state.ts";
import { speak, t } from "../text/index.ts";
import { onOffer, type Language } from "../text/offer.ts";
import { isCode, languages, scriptOf, wanted, type Code } from "../text/wanted.ts";

export { languages };
export type { Code };
export type Choice = Code | "auto";

const preference = "language";
const patience = 2500; // ms that the first sight of the page may wait for its texts

async function fetched(code: Code, rest: boolean): Promise<void> {
  const script = scriptOf(code, rest);
  if (!script) throw new Error(languages[code]);
  await import(script);
}

class Speaker {
  choice: Choice = "auto";
  code: Code = "en"; // spoken now
  private words = "";
  private asked = 0;
  private whole = false; // more than the first screen is there, and wants its words

  constructor() {
    const kept = readPreference(preference);
    if (isCode(kept)) this.choice = kept;
  }

  // wanted is spoken as soon as its texts are there.
  get wanted(): Code {
    return wanted(this.choice, navigator.languages);
  }

  // choose changes the language, and remembers it.
  choose(choice: Choice): void {
    this.choice = choice;
    writePreference(preference, choice);
    store.touch();
    void this.follow();
  }

  // follow goes over to the language that is wanted now.
  async follow(): Promise<void> {
    const { wanted } = this;
    const asked = ++this.asked;
    if (wanted === this.code) return;
    try {
      const language = await this.get(wanted);
      if (asked !== this.asked) return; // another was chosen since
      this.say(wanted, language);
    } catch (e) {
      this.failed(e);
      return;
    }
    if (store.catalogue.length > 0) store.learn();
    store.evaluate(); // what the core says in sentences
  }

  // complete gets the words besides those of the first screen, before what says them
  // is there; without them the page goes over to English, which it has.
  async complete(): Promise<void> {
    this.whole = true;
    const { code } = this;
    try {
      const language = await this.get(code);
      if (code === this.code) this.say(code, language);
    } catch (e) {
      if (code === this.code) this.say("en", null);
      this.failed(e);
    }
  }

  // get fetches the texts of a language, once: those of the first screen, or all.
  private async get(code: Code): Promise<Language | null> {
    if (code === "en") return null;
    if (!onOffer(code)) await fetched(code, false);
    if (this.whole && !onOffer(code)?.whole) await fetched(code, true);
    const l = onOffer(code);
    if (!l) throw new Error(languages[code]);
    return l;
  }

  private say(code: Code, language: Language | null): void {
    speak(language);
    this.code = code;
    this.words = language && this.whole ? JSON.stringify(language.words) : "";
    document.documentElement.lang = code;
    this.teach();
  }

  private failed(e: unknown): void {
    store.tell(t("language.failed", { why: e instanceof Error ? e.message : String(e) }), undefined, "error");
  }

  // teach tells the core the words.
  teach(): void {
    if (core.state !== "ready") return;
    core.speak(this.words);
    core.window!.document.documentElement.lang = this.code;
  }
}

export const speaker = new Speaker();
store.language = () => speaker.code;

core.addEventListener("state", () => speaker.teach());
addEventListener("languagechange", () => void speaker.follow());

// The page shows itself in its language from the start, unless that takes long.
await Promise.race([speaker.follow(), new Promise((enough) => setTimeout(enough, patience))]);
