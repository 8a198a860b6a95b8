// Checks that imports of the page's code run downwards only. A folder may import
// from itself and from those that stand after it here; what stands in web/ itself
// is the entries of the page, and may import everything. Folders of one layer may
// import from each other, but no room from another: what two of them share stands
// in elements or app, and no room uses words of another: what two of them say stands
// in text. Every room that shows itself on the page is in rooms/rooms.ts, and every
// room that has words has them in every language.
// Tests and what they stand on may import everything. Of styles it checks that they
// are in layers of the cascade.

import { existsSync, readdirSync, readFileSync } from "node:fs";
import { dirname, join, normalize, relative } from "node:path";
import { fileURLToPath } from "node:url";

const layers = [["rooms"], ["elements"], ["app", "offline"], ["io"], ["core"], ["model"], ["text"]];
const rank = (file) => {
  const folder = file.includes("/") ? file.slice(0, file.indexOf("/")) : "";
  return folder === "" ? -1 : layers.findIndex((l) => l.includes(folder));
};

const web = dirname(fileURLToPath(import.meta.url));
const files = readdirSync(web, { recursive: true, encoding: "utf8" }).filter((f) => f.endsWith(".ts") && !/^(node_modules|testing)\b|\.test\.ts$/.test(f));
// room is the folder of the room that a file is of.
const room = (file) => /^rooms\/([^/]+)\//.exec(file)?.[1];
const list = "rooms/rooms.ts";
const listed = readFileSync(join(web, list), "utf8");
let wrong = 0;
for (const file of files) {
  if (rank(file) < 0 && file.includes("/")) {
    console.error(`web/${file} lies in no layer; web/layers.mjs has the list`);
    wrong++;
  }
  if (/^rooms\/[^/]+\/index\.ts$/.test(file) && !listed.includes(`"./${room(file)}/index.ts"`)) {
    console.error(`web/${file} makes a room that web/${list} does not name`);
    wrong++;
  }
  for (const [, path] of readFileSync(join(web, file), "utf8").matchAll(/(?:from|import)\s*\(?\s*"(\.[^"]+)"/g)) {
    const target = relative(web, normalize(join(web, dirname(file), path)));
    if (!target.startsWith("..") && rank(target) < rank(file)) {
      console.error(`web/${file} imports ${target}, which lies above it`);
      wrong++;
    }
    if (room(file) && target.startsWith("rooms/") && room(target) !== room(file)) {
      console.error(`web/${file} imports ${target}, which is of another room`);
      wrong++;
    }
  }
}

// The words of a room are in its text.ts, and in German in text.de.ts.
const languages = readdirSync(join(web, "text")).flatMap((f) => /^([a-z]{2})\.ts$/.exec(f)?.[1] ?? []);
for (const file of files.filter((f) => /^rooms\/[^/]+\/text\.ts$/.test(f))) {
  for (const code of languages.filter((c) => c !== "en")) {
    const other = file.replace(/\.ts$/, `.${code}.ts`);
    if (!existsSync(join(web, other))) {
      console.error(`web/${other} is missing: the words of web/${file} in that language`);
      wrong++;
    }
  }
  const own = new Set(Array.from(readFileSync(join(web, file), "utf8").matchAll(/^ {2}"([\w.-]+)":/gm), ([, key]) => key));
  for (const user of files.filter((f) => room(f) !== room(file))) {
    for (const [, key] of readFileSync(join(web, user), "utf8").matchAll(/"([\w.-]+)"/g)) {
      if (!own.has(key)) continue;
      console.error(`web/${user} uses ${key}, which is a word of the room ${room(file)}; what others use stands in web/text`);
      wrong++;
    }
  }
}

// The first screen has the words of the same rooms in every language.
const texts = (file, ending) =>
  Array.from(readFileSync(join(web, file), "utf8").matchAll(/^import "\.\/(rooms\/[\w-]+)\/([\w.]+)";$/gm))
    .flatMap(([, folder, name]) => (name === ending ? folder : []))
    .join(" ");
for (const code of languages.filter((c) => c !== "en")) {
  const main = texts("main.ts", "text.ts");
  const other = texts(`${code}.ts`, `text.${code}.ts`);
  if (main === other && main !== "") continue;
  console.error(`web/${code}.ts has the words of ${other || "no room"} for the first screen, web/main.ts those of ${main || "no room"}`);
  wrong++;
}

// Every rule of the page's style is in a layer (page.css), and the layers decide
// what wins. The frame's style has to beat what ebiten writes into elements.
for (const file of readdirSync(web, { recursive: true, encoding: "utf8" }).filter((f) => /^(rooms|elements|styles)\b.*\.css$/.test(f))) {
  const text = readFileSync(join(web, file), "utf8");
  if (text.includes("!important")) {
    console.error(`web/${file} says !important; a later layer does that`);
    wrong++;
  }
  for (const [rule] of text.replace(/\/\*.*?\*\//gs, "").matchAll(/^[^\s}@].*|^@(?!layer|font-face|page).*/gm)) {
    console.error(`web/${file}: ${rule} is in no layer`);
    wrong++;
  }
}
if (wrong > 0) process.exit(1);
