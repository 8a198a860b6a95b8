// Gears of all builds: how far they reach, how even they are, and what they lose.

import { html, nothing, type TemplateResult } from "lit";
import { answer, comparedIn, type Told } from "./answer.ts";
import { headed, measureFirst } from "../../elements/comparison.ts";
import { subhead } from "../../elements/copytable.ts";
import { numberInput, problemAt } from "../../elements/field.ts";
import { badge, number } from "../../elements/figure.ts";
import { inputLine, lossLine } from "../../elements/inputs.ts";
import { reckoned, type Reckoned } from "../../elements/known.ts";
import { ladder } from "../../elements/ladder.ts";
import type { Gist } from "../../elements/room.ts";
import { narrow } from "../../elements/narrow.ts";
import { Section } from "../../elements/section.ts";
import { findBuild } from "../../app/edit.ts";
import { setAt } from "../../app/fields.ts";
import { store } from "../../app/state.ts";
import { t } from "../../text/index.ts";
import type { GearsAnswer as Said, ToldGear } from "../../model/types.ts";
import { decimal, plainScale, trim, write } from "../../model/units.ts";

export function gist(): Gist {
  return { text: t("gears.gist") };
}

// speeds says how fast the lowest and the highest gear are at the cadence liked.
function speeds(b: Said["builds"][number]): string {
  const [low, high] = [b.gears[0], b.gears.at(-1)].map((g) => (g?.speed_m_s ? decimal(g.speed_m_s * 3.6, 1) : ""));
  return low && high ? t("gears.speeds", { low, high, rpm: trim(b.cadence_rpm, 0) }) : "";
}

// Losses that stand for nothing in particular.
const others = ["other-share", "other-power"] as const;

function addLoss(build: string, of: (typeof others)[number]): void {
  store.edit(t(`gears.add.${of}`), (d) => {
    const n = findBuild(d, build)?.losses?.stages?.length ?? 0;
    return setAt(d, { build, field: `losses.stages.${n}` }, { of, value: 0, half_width: 0, basis: "guessed" });
  });
}

const inches = (value: Said) => value.unit === "inches";
const reach = (value: Said, g: ToldGear) => (inches(value) ? g.inches : g.development_mm / 1000);

class Gears extends Section {
  protected readonly fold = "gears";

  protected body(): TemplateResult {
    const { value, why, stale } = answer.seen();
    if (!value) return html`<p class="quiet">${why || t("rooms.working")}</p>`;
    const list = comparedIn(value);
    return html`<div class=${stale ? "stale" : ""} aria-busy=${stale}>
      <p class="caution"><strong>${t("page.caution")}.</strong> ${value.caution}</p>
      ${value.words ? html`<p class="verdictwords">${value.words}</p>` : nothing}
      ${value.builds.map((b) => (b.words ? html`<p class="sidewords"><strong>${b.name}.</strong> ${b.words}</p>` : nothing))}
      ${value.builds.flatMap((b) => b.problems.map((p) => html`<p class="quiet">${b.name}: ${p.message}</p>`))}
      ${ladder({
        label: t("gears.chart"),
        wide: narrow.matches ? 350 : 900,
        x: t(inches(value) ? "gears.inches" : "gears.metres"),
        lines: value.builds
          .filter((b) => b.gears.length)
          .map((b) => ({ name: b.name, beside: speeds(b), rungs: b.gears.map((g) => ({ at: reach(value, g), weak: g.crossed || g.shift === 0 })) })),
      })}
      <div class="set shown">
        ${(["development", "inches"] as const).map(
          (u) =>
            html`<button
              type="button"
              class="toggle"
              aria-pressed=${value.unit === u}
              @click=${() => store.edit(t("do.gearunit"), (d) => ({ ...d, show: { ...d.show, gears: u } }))}
            >
              ${t(`gears.as.${u}`)}
            </button>`,
        )}
      </div>
      <div class="roomsheet">
        <div>
          ${headed(
            t("gears.figures"),
            list.map(({ letter, build }) => ({ letter, figures: build.figures })),
            value.difference,
          )}
          <p class="fine">${t("gears.help")}</p>
          ${this.rule(value)}
        </div>
        ${list.map((one) => html`<div>${this.table(value, one, list.length > 1)}</div>`)} ${list.map((one) => html`<div>${this.drive(one, list.length > 1)}</div>`)}
      </div>
    </div>`;
  }

  private table(value: Said, { letter, build }: Told, two: boolean): TemplateResult {
    const name = html`${two ? badge(letter) : nothing} ${build.name}`;
    if (!build.ok) return html`<h3>${name}</h3><p class="quiet">${t("gears.unread")}</p>`;
    const m = plainScale("", 2);
    const percent = plainScale("", 1);
    const of = (g: ToldGear) => (g.ring && g.cog ? `${g.ring}–${g.cog}` : [g.front, g.rear].filter(Boolean).join(" · "));
    return html`${subhead(name, `${t("gears.table")}: ${build.name}`)}
      <table class="lines compared gearlist">
        <caption class="unseen">
          ${t("gears.table")}
        </caption>
        <thead>
          <tr>
            <th scope="col">${t("gears.gear")}</th>
            <th scope="col" class="right doubt">${t(inches(value) ? "gears.inches" : "gears.metres")}</th>
            <th scope="col" class="right">${t("gears.step")}</th>
            <th scope="col" class="right doubt">${t("gears.speed", { rpm: trim(build.cadence_rpm, 0) })}</th>
            <th scope="col" class="right doubt">${t("gears.efficiency")}</th>
          </tr>
        </thead>
        <tbody>
          ${build.gears
            .filter((g) => g.shift > 0)
            .toSorted((a, b) => a.shift - b.shift)
            .map(
              (g) =>
                html`<tr>
                  <th scope="row">${g.shift} <span class="unit">${of(g)}</span>${g.double ? html` <abbr title=${t("gears.double")}>⇄</abbr>` : nothing}</th>
                  <td>${number(inches(value) ? write(g.inches, 0, percent) : write(g.development_mm / 1000, g.development_plus / 1000, m))}</td>
                  <td class="right">${g.step_percent === undefined ? "" : decimal(g.step_percent, 1)}</td>
                  <td>${number(write(g.speed_m_s * 3.6, g.speed_plus * 3.6, percent))}</td>
                  <td>${g.efficiency ? number(write(100 * g.efficiency, 100 * g.efficiency_plus, percent)) : "–"}</td>
                </tr>`,
            )}
        </tbody>
      </table>
      ${build.typical.length ? html`<p class="fine">${t("gears.typical")}</p>` : nothing}`;
  }

  // drive is what one build's drive loses, and what else is known of it, each to be
  // said in place.
  private drive({ letter, build }: Told, two: boolean): TemplateResult | typeof nothing {
    if (!build.ok) return nothing;
    const percent = plainScale("", 1);
    const mark = two ? badge(letter) : nothing;
    const losses = build.losses.map((l): Reckoned => {
      const { set, forget, ...told } = lossLine(l, build.build);
      const extra = number(write(l.percent, l.percent_plus, percent));
      return l.field === "losses.efficiency" ? { ...told, extra } : { ...told, ...(set ? { set } : {}), ...(forget ? { forget } : {}), extra };
    });
    return html`${subhead(html`<span>${mark} ${t("gears.losses")}</span>`, `${t("gears.losses")}: ${build.name}`)}
      ${reckoned(`${t("gears.losses")}: ${build.name}`, losses, t("gears.lost"))}
      <p class="fine">${t("gears.losses.help", { watts: trim(build.power_w, 0), rpm: trim(build.cadence_rpm, 0) })}</p>
      ${measureFirst(build.first)}
      <div class="acts">
        ${others.map((of) => html`<button type="button" @click=${() => addLoss(build.build, of)}>${t(`gears.add.${of}`)}<span class="unseen">: ${build.name}</span></button>`)}
      </div>
      <h3><span>${mark} ${t("gears.whole")}</span></h3>
      ${reckoned(
        `${t("gears.whole")}: ${build.name}`,
        build.inputs.map((i) => inputLine(i, "drive", build.problems)),
      )}
      <p class="fine">${t("gears.whole.help")}</p>`;
  }

  // The rule by which gears are left out, where there are rings to cross to.
  private rule(value: Said): TemplateResult | typeof nothing {
    if (!value.builds.some((b) => new Set(b.gears.map((g) => g.ring)).size > 1)) return nothing;
    const said = store.doc!.show.crossed_cogs ?? undefined;
    const set = (n: number | undefined) => store.edit(t("gears.crossed"), (d) => setAt(d, { field: "show.crossed_cogs" }, n), "show/crossed_cogs");
    return html`<div class="specs narrowspecs">
        ${numberInput({
          key: "show/crossed_cogs",
          label: t("gears.crossed"),
          value: said ?? value.crossed_cogs,
          whole: true,
          step: 1,
          problem: problemAt("show.crossed_cogs", ""),
          set,
        })}
      </div>
      <p class="fine">
        ${t("gears.crossed.help")}
        ${said === undefined ? nothing : html`<button type="button" class="plain" @click=${() => set(undefined)}>${t("known.forget")}<span class="unseen">: ${t("gears.crossed")}</span></button>`}
      </p>`;
  }
}

customElements.define("sy-gears", Gears);
