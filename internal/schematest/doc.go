// Package schematest holds the JSON Schemas of data/schema against the Go types
// and the texts that they are of, for tests. The schemas are published, and the
// page's types are made of them (web/model/types.ts): with these checks there is
// one source of what a key is called, which values it may have, and whether it
// is always there.
//
// A schema is named by its file without the ending, and a definition in it by
// the file, a # and the key under $defs, anything else in it by a JSON pointer:
// "document", "document#part", "bridge#/properties/open".
//
// Two keywords beside those of JSON Schema 2020-12 are ours. x-type is the name
// of the TypeScript type, when it is not the key of the definition. x-written
// lists the keys of an object of the document that the program always writes;
// a document that is read needs only those that required lists, and may give
// null for others.
package schematest
