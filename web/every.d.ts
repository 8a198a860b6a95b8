// The build takes "every:rooms/*/text.ts" for all files of that name, in the order
// of their folders (internal/site/static/every.go).
declare module "every:*";
