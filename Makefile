# Needs Go, Node.js with npm, and make.
#
#   make run     build the page and serve it on this machine
#   make build   write the static site to dist/
#   make single  the same, and dist/steelyard.html: all of it in one file
#   make test    everything that must hold before a change goes in
#   make fuzz    every fuzz target for FUZZTIME each
#   make types   web/model/types.ts anew, of data/schema
#   make bench   one table of measured figures
#   make clean   remove what these made

ADDR     ?= 127.0.0.1:8173
FUZZTIME ?= 2m

# What runs in the browser is checked for the browser, what does not is not:
# ebiten's other platforms would want headers of the window system.
WASM := ./wasm/... ./internal/site/empty
TSC  := node web/node_modules/typescript/bin/tsc

.PHONY: run build single test fuzz bench clean lint page types unit smoke browser chromium glpk poppler modules

run:
	go run ./internal/site serve -addr $(ADDR)

build:
	go run ./internal/site build

single:
	go run ./internal/site single

# In this order: what fails fast comes first.
test: chromium glpk poppler lint page unit smoke browser
	@echo "All tests passed."

lint: .build/staticcheck
	test -z "$$(gofmt -l data internal wasm | tee /dev/stderr)"
	go vet ./...
	.build/staticcheck ./...
	GOOS=js GOARCH=wasm go vet $(WASM)
	GOOS=js GOARCH=wasm .build/staticcheck $(WASM)

# The version is the one that go.mod names.
.build/staticcheck: go.mod
	go build -o $@ honnef.co/go/tools/cmd/staticcheck

page: modules
	node web/model/generate.mjs --check
	$(TSC) --noEmit -p web

# The page's types, after a schema in data/schema was changed.
types: modules
	node web/model/generate.mjs

modules:
	go run ./internal/site modules

# The race detector needs a C compiler.
unit:
	@if [ "$$(go env CGO_ENABLED)" = 1 ] && command -v "$$(go env CC)" >/dev/null; then race=-race; \
	else echo "No C compiler: testing without the race detector."; race=; fi; \
	set -x; go test $$race $$(go list ./... | grep -v /internal/browsertest)

smoke:
	.ci/fuzz 2s

browser: chromium poppler
	go test -count=1 -timeout 60m ./internal/browsertest

chromium:
	@.ci/chromium

glpk:
	@.ci/glpk

poppler:
	@.ci/poppler

fuzz:
	.ci/fuzz $(FUZZTIME)

bench: chromium
	go run ./internal/browsertest/measure

clean:
	rm -rf dist .build web/node_modules bench.txt
