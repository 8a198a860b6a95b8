// A disclosure of a few buttons beside the one that opens it. It closes on
// Escape, on a choice, and when the focus or the pointer goes elsewhere.

import { html, LitElement, type TemplateResult } from "lit";

export interface MenuItem {
  label: string;
  run: () => void;
  disabled?: boolean;
}

export class Menu extends LitElement {
  static override properties = { label: {}, name: {}, items: { attribute: false, hasChanged: () => false } };
  declare label: string; // what is seen
  declare name: string; // what is said, if that is more
  declare items: MenuItem[]; // a closed menu does not follow them
  private shown = false;
  private readonly outside = (e: Event) => {
    if (!e.composedPath().includes(this)) this.toggle(false);
  };

  constructor() {
    super();
    this.label = "";
    this.name = "";
    this.items = [];
  }

  protected override createRenderRoot(): HTMLElement {
    return this;
  }

  override disconnectedCallback(): void {
    this.toggle(false);
    super.disconnectedCallback();
  }

  private toggle(shown: boolean, refocus = false): void {
    if (this.shown === shown) return;
    this.shown = shown;
    const act = shown ? "addEventListener" : "removeEventListener";
    document[act]("pointerdown", this.outside);
    document[act]("focusin", this.outside);
    this.requestUpdate();
    if (refocus) this.querySelector("button")?.focus();
    if (shown) void this.updateComplete.then(() => this.querySelector<HTMLButtonElement>(".menu-items button:not(:disabled)")?.focus());
  }

  private key(e: KeyboardEvent): void {
    if (!this.shown) return;
    const buttons = [...this.querySelectorAll<HTMLButtonElement>(".menu-items button:not(:disabled)")];
    const at = buttons.indexOf(document.activeElement as HTMLButtonElement);
    if (e.key === "Escape") {
      e.stopPropagation();
      this.toggle(false, true);
    } else if (e.key === "ArrowDown" || e.key === "ArrowUp") {
      e.preventDefault();
      const n = buttons.length;
      buttons[(at + (e.key === "ArrowDown" ? 1 : n - 1) + n) % n]?.focus();
    }
  }

  protected override render(): TemplateResult {
    return html`<div class="menu" @keydown=${(e: KeyboardEvent) => this.key(e)}>
      <button type="button" class="plain" aria-expanded=${this.shown} @click=${() => this.toggle(!this.shown)}>
        <span aria-hidden=${this.name ? "true" : "false"}>${this.label}</span>${this.name ? html`<span class="unseen">${this.name}</span>` : ""}
      </button>
      <div class="menu-items" ?hidden=${!this.shown}>
        ${this.items.map(
          (i) =>
            html`<button
              type="button"
              ?disabled=${i.disabled ?? false}
              @click=${() => {
                this.toggle(false, true);
                i.run();
              }}
            >
              ${i.label}
            </button>`,
        )}
      </div>
    </div>`;
  }
}

customElements.define("sy-menu", Menu);
