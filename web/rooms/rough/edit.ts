// What is said of a rough road and of how a bike is set up for it, put into the
// document.

import { editBuild, setPath } from "../../app/edit.ts";
import { store } from "../../app/state.ts";
import { t } from "../../text/index.ts";
import type { Build, RoadWrite, RoughRoad } from "../../model/types.ts";

// ask changes the road, or how it is ridden. What is undefined is taken out.
export function ask(change: { [K in keyof RoughRoad]?: RoughRoad[K] | undefined }, key = "show/rough"): void {
  store.edit(
    t("do.rough"),
    (d) => {
      const rough = Object.entries({ ...d.show.rough, ...change }).filter(([, v]) => v !== undefined);
      return { ...d, show: { ...d.show, rough: Object.fromEntries(rough) as RoughRoad } };
    },
    key,
  );
}

// put writes into fields of a build as the core names them; null takes one out.
export function put(build: string, list: readonly RoadWrite[], key: string): void {
  store.edit(t("do.setup"), (d) => editBuild(d, build, (b) => list.reduce<Build>((b, { field, value }) => setPath(b, field, value ?? undefined), b)), key);
}
