// What a build lacks to be a whole bike, and what it goes without on purpose.

import { html, nothing, type TemplateResult } from "lit";
import { goWithout } from "../../app/edit.ts";
import { store } from "../../app/state.ts";
import { t, word } from "../../text/index.ts";
import type { Build, MissingRole } from "../../model/types.ts";
import { focusSoon } from "../../elements/element.ts";

const few = 6; // told at first of a build that lacks more

let whole = ""; // the build of which all is told

const id = "missing";

export function missing(build: Build, lacks: MissingRole[]): TemplateResult {
  const without = build.without ?? [];
  if (!build.parts.length || (!lacks.length && !without.length)) return html`<p id=${id} class="missing" tabindex="-1" hidden></p>`;
  const all = whole === build.id || lacks.length <= few + 1;
  const told = all ? lacks : lacks.slice(0, few);
  return html`<div id=${id} class="missing" tabindex="-1" role="group" aria-label=${t("missing.group")}>
    ${
      lacks.length
        ? html`<p>
          <span class="lead">${t("missing.lead")}</span>
          ${told.map((r) => role(r.name, t("missing.dismiss", { name: r.name }), "×", () => go(build, [r.role], true)))}
          ${
            all
              ? nothing
              : html`<button
                type="button"
                class="plain"
                @click=${() => {
                  whole = build.id;
                  store.touch();
                }}
              >
                ${t("missing.more", { n: lacks.length - told.length })}
              </button>`
          }
        </p>`
        : nothing
    }
    ${
      without.length
        ? html`<p class="quiet">
          <span class="lead">${t("missing.without")}</span>
          ${without.map((r) => role(word("role", r), t("missing.back", { name: word("role", r) }), "↩", () => go(build, [r], false)))}
        </p>`
        : nothing
    }
  </div>`;
}

function role(name: string, label: string, sign: string, act: () => void): TemplateResult {
  return html`<span class="role"
    >${name}<button type="button" class="plain" aria-label=${label} title=${label} @click=${act}><span aria-hidden="true">${sign}</span></button></span
  >`;
}

function go(build: Build, roles: string[], on: boolean): void {
  const name = roles.map((r) => word("role", r)).join(", ");
  store.edit(t(on ? "do.without" : "do.with", { name, build: build.name }), (d) => goWithout(d, build.id, roles, on));
  focusSoon(id);
  store.tell(t(on ? "missing.dismissed" : "missing.returned", { name }), { label: t("undo"), run: () => store.undo() });
}
