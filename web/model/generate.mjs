// Makes web/model/types.ts of the JSON Schemas in data/schema:
//
//	node web/model/generate.mjs          writes it
//	node web/model/generate.mjs --check  fails when it is not what would be written
//
// Every schema and every definition becomes one exported type, named by its
// x-type or its key. The types of the document are those of a whole one, as the
// core writes it: x-written says which keys are always there. Enumerations and
// defaults, which the page offers and falls back to, become constants.

import { createHash } from "node:crypto";
import { readdirSync, readFileSync, writeFileSync } from "node:fs";
import { compile } from "json-schema-to-typescript";

const schemas = new URL("../../data/schema/", import.meta.url);
const target = new URL("types.ts", import.meta.url);
const style = { printWidth: 160 };

const pascal = (key) => key.replace(/(^|[_-])(\w)/g, (_, __, c) => c.toUpperCase());
const camel = (name) => name[0].toLowerCase() + name.slice(1);

// all are the types to be, by the reference that means them.
const all = new Map();
for (const file of readdirSync(schemas).sort()) {
  const root = JSON.parse(readFileSync(new URL(file, schemas), "utf8"));
  const add = (pointer, schema, key) => all.set(root.$id + pointer, { id: root.$id, key, schema, name: schema["x-type"] ?? pascal(key) });
  const { $defs = {}, ...whole } = root;
  add("", whole, file.replace(/\..*/, ""));
  for (const [key, schema] of Object.entries($defs)) add(`#/$defs/${key}`, schema, key);
}

const taken = new Map();
for (const [ref, { name }] of all) {
  if (taken.has(name)) throw new Error(`${name} is both ${taken.get(name)} and ${ref}: give one of them an x-type`);
  taken.set(name, ref);
}

function nameOf(ref, id) {
  const type = all.get(ref.startsWith("#") ? id + ref : ref);
  if (!type) throw new Error(`there is no schema ${ref}`);
  return type.name;
}

const isNull = (schema) => schema.type === "null";

// plain brings a schema into what the compiler can name: references become names
// of types, and what only a validator can hold goes.
function plain(schema, id) {
  if (Array.isArray(schema)) return schema.map((v) => plain(v, id));
  if (typeof schema !== "object" || schema === null) return schema;
  if (schema.$ref) return { ...(schema.description && { description: schema.description }), tsType: nameOf(schema.$ref, id) };
  if (schema.maxItems === 0) return { tsType: "[]" };
  if (schema.prefixItems)
    return {
      tsType: `[${schema.prefixItems.map((a) => `${a.title}: ${a.enum ? a.enum.map((v) => JSON.stringify(v)).join(" | ") : a["x-bytes"] ? "string | Uint8Array" : "string"}`).join(", ")}]`,
    };
  const out = { ...schema };
  for (const key of ["$schema", "$id", "title", "x-type", "x-written", "if", "then", "contentMediaType", "contentSchema", "propertyNames", "default"])
    delete out[key];
  if (out.properties || out.type) delete out.anyOf;
  if (out.minItems !== out.maxItems) {
    delete out.minItems;
    delete out.maxItems;
  }
  for (const key of ["items", "anyOf", "additionalProperties"]) if (key in out) out[key] = plain(out[key], id);
  if (out.properties) {
    const always = schema["x-written"];
    out.required = always ?? schema.required ?? [];
    out.properties = Object.fromEntries(
      Object.entries(out.properties).map(([key, p]) => {
        // A key of the document that is not always written is left out, never null.
        const given = always && !always.includes(key) && p.anyOf?.some(isNull) ? { ...p, anyOf: p.anyOf.filter((v) => !isNull(v)) } : p;
        return [key, plain(given, id)];
      }),
    );
  }
  return out;
}

const written = (v) => (Array.isArray(v) ? `[${v.map(written).join(", ")}]` : JSON.stringify(v));

// constants are the values of an enumeration, and the defaults of an object.
function constants({ key, schema, name }) {
  if (schema.enum) return `export const ${key}Values = ${written(schema.enum)} as const satisfies readonly ${name}[];\n`;
  const defaults = Object.entries(schema.properties ?? {}).filter(([, p]) => "default" in p);
  if (!defaults.length) return "";
  return `export const ${camel(name)}Defaults = { ${defaults.map(([k, p]) => `${k}: ${written(p.default)}`).join(", ")} } satisfies Partial<${name}>;\n`;
}

let text = "// Made of data/schema by web/model/generate.mjs (make types): not to be edited by hand.\n";
for (const type of all.values()) {
  const made = await compile({ title: type.name, ...plain(type.schema, type.id) }, type.name, { bannerComment: "", additionalProperties: false, style });
  text += `\n${made}${constants(type)}`;
}

// What is kept of a document and its report can be shown as it is by a page with
// the same contract: the schemas of both, without what is said in them.
const unsaid = (key, v) => (key === "description" && typeof v === "string" ? undefined : v);
const contract = createHash("sha256");
for (const file of ["catalogue", "document", "report"])
  contract.update(JSON.stringify(JSON.parse(readFileSync(new URL(`${file}.schema.json`, schemas), "utf8")), unsaid));
text += `\n/** What a document, its report, kinds and stations look like. */\nexport const contract = "${contract.digest("hex").slice(0, 16)}";\n`;

if (process.argv.includes("--check")) {
  if (readFileSync(target, "utf8") !== text) {
    console.error("web/model/types.ts is not what data/schema gives: run make types");
    process.exit(1);
  }
} else writeFileSync(target, text);
