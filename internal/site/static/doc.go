// Package static turns the sources into the static site and serves it.
//
// What is written:
//
//	index.html, and every script and style that it links
//	frame.html, and every script that it links: the canvas's own document
//	steelyard.wasm.gz   the program, inflated by the frame
//	first/*.json        what is shown until the program is there: the demo's figures and picture, by language
//	wasm_exec.js        the Go toolchain's loader, from the toolchain at hand
//	fonts/*.ttf         the Go fonts, for the page's styles
//	manifest.webmanifest, icons/*.png   for installing; drawn from icon.svg
//	sw.js               the service worker that keeps all of this for offline use
//	notices.txt         the licences of what all this is made of
//	schema/*.json       the JSON Schemas of the document, the report and all that the bridge takes and gives
//
// The HTML files link their sources: `<script type="module" src="main.ts">`,
// `<link rel="stylesheet" href="styles/page.css">`. Each such source becomes
// a bundle at the same path (.ts ends in .js there), and every link to a file
// of the site gets the first digits of that file's hash as a query, so that a
// browser never joins an old part to a new one. Style sheets name the fonts as
// "fonts/go-regular.ttf", relative to the site's folder whatever the depth of
// the sheet.
//
// On request there is one file more, steelyard.html, that holds all of it.
//
// All paths are relative: the site works from any folder of any host. The same
// sources and tools give the same bytes.
package static
