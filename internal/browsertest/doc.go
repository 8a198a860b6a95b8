// Package browsertest drives the page in headless Chromium, as its user would,
// by accessible names, the pointer and keys, and does the main job in Firefox and
// WebKit as well. Its tests are those of the page
// and of the program compiled to WebAssembly.
//
// A page under test must not write an error to its console, throw, or ask for
// anything that is not on loopback; any of these fails the test.
package browsertest
