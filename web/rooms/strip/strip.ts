// The strip repeats the totals at the top of the window once the balance has
// scrolled out of it, so that whoever edits the list sees what it does. It is
// for the eye only: everything on it stands in the balance.

import { html, nothing, type TemplateResult } from "lit";
import { findBuild } from "../../app/edit.ts";
import { store } from "../../app/state.ts";
import { short, t } from "../../text/index.ts";
import { figureScale, plain, write } from "../../model/units.ts";
import { StoreElement } from "../../elements/element.ts";
import { badge } from "../../elements/figure.ts";

class Strip extends StoreElement {
  private on = false;
  private watch: IntersectionObserver | null = null;
  // What else stays at the top of the window does so below the strip.
  private readonly measure = new ResizeObserver(([e]) => {
    const high = (e?.target as HTMLElement | undefined)?.offsetHeight ?? 0;
    document.documentElement.style.setProperty("--strip", `${high}px`);
  });

  override connectedCallback(): void {
    super.connectedCallback();
    this.watch = new IntersectionObserver(([e]) => {
      const on = e !== undefined && !e.isIntersecting && e.boundingClientRect.top < 0;
      if (on === this.on) return;
      this.on = on;
      this.requestUpdate();
    });
  }

  protected override firstUpdated(): void {
    const pair = document.getElementById("balance");
    if (pair) this.watch?.observe(pair);
  }

  override disconnectedCallback(): void {
    this.watch?.disconnect();
    this.measure.disconnect();
    super.disconnectedCallback();
  }

  protected override updated(): void {
    const strip = this.querySelector(".strip");
    if (strip) this.measure.observe(strip);
    const over = this.on && strip ? "var(--strip)" : "0px";
    const { style } = document.documentElement;
    // What all of the page hangs on is set only when it changes.
    if (style.getPropertyValue("--over") !== over) style.setProperty("--over", over);
  }

  protected override render(): TemplateResult | typeof nothing {
    const doc = store.doc;
    if (!doc) return nothing;
    const s = figureScale("g", doc.show);
    const { A, B } = store.ids;
    const d = store.difference?.figures.find((f) => f.key === "total");
    const u = store.difference?.figures.find((f) => f.key === "unsprung_rear");
    const total = (letter: "A" | "B") => store.shown(letter)?.figures.find((f) => f.key === "total");
    return html`<div class="strip ${this.on ? "on" : ""}" aria-hidden="true">
      <div>
        ${(
          [
            ["A", A],
            ["B", B],
          ] as const
        ).map(([letter, id]) => {
          const f = total(letter);
          return id
            ? html`<span class="one"
                >${badge(letter)} <span class="build-name">${findBuild(doc, id)?.name}</span> <b>${f ? plain(write(f.value, f.plus, s)) : "–"}</b></span
              >`
            : nothing;
        })}
        ${d ? html`<span class="one delta">${t("table.diff")} <b>${plain(write(d.delta, d.plus, s, true))}</b></span>` : nothing}
        ${u ? html`<span class="one further">${short("figure", u.key)} <b>${plain(write(u.delta, u.plus, s, true))}</b></span>` : nothing}
      </div>
    </div>`;
  }
}

customElements.define("sy-strip", Strip);
