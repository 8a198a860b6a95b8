// What can be done with all the parts that are marked, each as one step.

import { html, nothing, type TemplateResult } from "lit";
import { live } from "lit/directives/live.js";
import { core } from "../../core/core.ts";
import { copyParts, editParts, removeParts } from "../../app/edit.ts";
import { spread } from "../../app/sharing.ts";
import { named } from "../../app/places.ts";
import { store } from "../../app/state.ts";
import { brief, count, t, word } from "../../text/index.ts";
import { basisValues, carrierValues, type Basis, type Carrier, type Part } from "../../model/types.ts";
import "../../elements/menu.ts";
import { marks, listed, marking } from "./marks.ts";

// What the marked parts are to become; empty leaves each as it is.
const to = { basis: "", kind: "", station: "", carrier: "" };

// meant are the marked parts that the build looked at still has.
function meant(): Set<string> {
  return new Set(store.build?.parts.filter((p) => marks.ids.has(p.id)).map((p) => p.id));
}

const undoing = () => ({ label: t("undo"), run: () => store.undo() });

export function deleteMarked(): void {
  const ids = meant();
  if (!ids.size) return;
  store.edit(count(ids.size, "do.marks.delete.one", "do.marks.delete.many"), (d) => removeParts(d, store.activeID, ids));
  for (const id of ids) store.open.delete(id);
  if (ids.has(store.selected)) store.select("");
  marks.ids.clear();
  store.touch();
  document.querySelector<HTMLElement>("#parts .markbar button")?.focus();
  store.tell(count(ids.size, "marks.deleted.one", "marks.deleted.many"), undoing());
}

function become(p: Part): Part {
  const { at_mm, ...rest } = p;
  const kind = to.kind || p.kind;
  const carrier = (to.carrier || p.carrier) as Carrier;
  if (!to.station) return { ...p, kind, carrier };
  // A part with a place of its own stands at the station itself.
  return { ...rest, kind, carrier, station: to.station, ...(at_mm ? { offset_mm: [0, 0, 0] as Part["offset_mm"] } : {}) };
}

function set(): void {
  const ids = meant();
  const build = store.activeID;
  const basis = to.basis as Basis | "";
  store.edit(count(ids.size, "do.marks.set.one", "do.marks.set.many"), (d) => {
    const known = basis
      ? spread(
          d,
          "parts",
          [...ids].map((id) => ({ owner: build, id, to: (p) => ({ ...p, basis, half_width_g: core.halfWidth(basis, p.mass_g) }) })),
        )
      : d;
    return to.kind || to.station || to.carrier ? editParts(known, build, ids, become) : known;
  });
  Object.assign(to, { basis: "", kind: "", station: "", carrier: "" });
  store.touch();
  store.tell(count(ids.size, "marks.set.one", "marks.set.many"), undoing());
}

function copy(builds: readonly string[], name: string): void {
  const ids = meant();
  let made = 0;
  store.edit(count(ids.size, "do.marks.copy.one", "do.marks.copy.many", { name }), (d) => {
    const r = copyParts(d, store.activeID, ids, builds);
    made = r.made;
    return r.doc;
  });
  const there = ids.size * builds.length - made;
  store.tell(
    `${count(made, "marks.copied.one", "marks.copied.many", { name })}${there > 0 ? ` ${count(there, "marks.there.one", "marks.there.many")}` : ""}`,
    made > 0 ? undoing() : undefined,
  );
}

function pick(key: keyof typeof to, label: string, options: TemplateResult | TemplateResult[]): TemplateResult {
  return html`<label
    ><span>${label}</span>
    <select
      .value=${live(to[key])}
      @change=${(e: Event) => {
        to[key] = (e.target as HTMLSelectElement).value;
        store.touch();
      }}
    >
      <option value="">${t("marks.leave")}</option>
      ${options}
    </select></label
  >`;
}

const option = (value: string, label: string) => html`<option value=${value}>${label}</option>`;

export function markbar(): TemplateResult | typeof nothing {
  if (!marks.on || !store.doc) return nothing;
  const n = meant().size;
  const others = store.doc.builds.filter((b) => b.id !== store.activeID);
  const groups = [...new Set(store.kinds.map((k) => k.group))];
  const some = Object.values(to).some((v) => v !== "");
  return html`<div class="markbar" role="group" aria-label=${t("marks.group")}>
    <div class="acts">
      <strong role="status">${n ? count(n, "marks.one", "marks.many") : t("marks.none")}</strong>
      <button
        type="button"
        class="plain"
        @click=${() => {
          for (const id of listed()) marks.ids.add(id);
          store.touch();
        }}
      >
        ${t("marks.all")}
      </button>
      <button
        type="button"
        class="plain"
        ?disabled=${!n}
        @click=${() => {
          marks.ids.clear();
          store.touch();
        }}
      >
        ${t("marks.clear")}
      </button>
      <button type="button" class="danger" ?disabled=${!n} @click=${deleteMarked}>${t("marks.delete")}</button>
      ${
        others.length && n
          ? html`<sy-menu
            .label=${t("marks.copy")}
            .items=${[
              ...others.map((b) => ({ label: brief(b.name || b.id), run: () => copy([b.id], b.name || b.id) })),
              ...(others.length > 1
                ? [
                    {
                      label: t("marks.copy.all"),
                      run: () =>
                        copy(
                          others.map((b) => b.id),
                          t("marks.copy.all"),
                        ),
                    },
                  ]
                : []),
            ]}
          ></sy-menu>`
          : nothing
      }
      <button
        type="button"
        class="plain end"
        @click=${() => {
          marking(false);
          document.getElementById("marks-on")?.focus();
        }}
      >
        ${t("marks.off")}
      </button>
    </div>
    <div class="becoming">
      ${pick(
        "basis",
        t("parts.basis"),
        basisValues.map((b) => option(b, t(`basis.${b}.short`))),
      )}
      ${pick(
        "kind",
        t("part.kind"),
        groups.map(
          (g) =>
            html`<optgroup label=${word("group", g)}>
              ${store.kinds.filter((k) => k.group === g).map((k) => option(k.id, word("kind", k.id)))}
            </optgroup>`,
        ),
      )}
      ${pick(
        "station",
        t("parts.station"),
        store.stations.map((s) => option(s.name, named("station", s.name))),
      )}
      ${pick(
        "carrier",
        t("parts.carrier"),
        carrierValues.map((c) => option(c, named("carrier", c))),
      )}
      <button type="button" ?disabled=${!n || !some} @click=${set}>${n ? count(n, "marks.apply.one", "marks.apply.many") : t("marks.apply")}</button>
    </div>
    <p class="fine">${t("marks.help")}</p>
  </div>`;
}
