// The build takes "every:rooms/*/text.ts" for all files of that name, in the order
// of their folders (internal/site/static/every.go).
declare module "every:*";

// And "labels:en" for those of the core's words in that language that the page says
// itself (internal/site/static/labels.go).
declare module "labels:*" {
  const words: Record<string, string>;
  export default words;
}
