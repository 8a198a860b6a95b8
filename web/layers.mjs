// Checks that imports of the page's code run downwards only. A folder may import
// from itself and from those that stand after it here; what stands in web/ itself
// is the entries of the page, and may import everything. Folders of one layer may
// import from each other, rooms too.

import { readdirSync, readFileSync } from "node:fs";
import { dirname, join, normalize, relative } from "node:path";
import { fileURLToPath } from "node:url";

const layers = [["rooms"], ["elements"], ["app", "offline"], ["io"], ["core"], ["model"], ["text"]];
const rank = (file) => {
  const folder = file.includes("/") ? file.slice(0, file.indexOf("/")) : "";
  return folder === "" ? -1 : layers.findIndex((l) => l.includes(folder));
};

const web = dirname(fileURLToPath(import.meta.url));
const files = readdirSync(web, { recursive: true, encoding: "utf8" }).filter((f) => f.endsWith(".ts") && !f.startsWith("node_modules"));
let wrong = 0;
for (const file of files) {
  if (rank(file) < 0 && file.includes("/")) {
    console.error(`web/${file} lies in no layer; web/layers.mjs has the list`);
    wrong++;
  }
  for (const [, path] of readFileSync(join(web, file), "utf8").matchAll(/(?:from|import)\s*\(?\s*"(\.[^"]+)"/g)) {
    const target = relative(web, normalize(join(web, dirname(file), path)));
    if (!target.startsWith("..") && rank(target) < rank(file)) {
      console.error(`web/${file} imports ${target}, which lies above it`);
      wrong++;
    }
  }
}
if (wrong > 0) process.exit(1);
