# Needs Go, Node.js with npm, and make.
#
#   make run     build the page and serve it on this machine
#   make build   write the static site to dist/
#   make single  the same, and dist/steelyard.html: all of it in one file
#   make check   the quick part of it: format, lint, types, unit tests, those of
#                packages that did not change from Go's cache
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

# tested runs the Go tests that $(1), arguments of gotestsum, selects, keeps what happened in
# .build/$(2).json, and tells which took longest. A test that skips itself has
# not tested, so it fails.
define tested
.build/gotestsum --format pkgname-and-test-fails --jsonfile .build/$(2).json $(1)
@echo "The slowest of them:"
@.build/gotestsum tool slowest --num 10 --jsonfile .build/$(2).json
@! grep '"Action":"skip"' .build/$(2).json | grep -o '"Package".*"Test":[^,]*' || { echo "These were skipped." >&2; exit 1; }
endef

# All packages but that of the browser's tests.
UNITS = $$(go list ./... | grep -v /internal/browsertest$$)

.PHONY: run build single check test fuzz bench clean lint page types unit race smoke browser browsers chromium firefox webkit glpk poppler modules

run:
	go run ./internal/site serve -addr $(ADDR)

build:
	go run ./internal/site build

single:
	go run ./internal/site single

# In this order: what fails fast comes first.
test: browsers glpk poppler lint page unit race smoke browser
	@echo "All tests passed."

check: glpk poppler lint page .build/gotestsum
	$(call tested,-- $(UNITS),check)

lint: .build/staticcheck .build/deadcode
	test -z "$$(gofmt -l data internal wasm | tee /dev/stderr)"
	go vet ./...
	.build/staticcheck ./...
	GOOS=js GOARCH=wasm go vet $(WASM)
	GOOS=js GOARCH=wasm .build/staticcheck $(WASM)
	.ci/deadcode

# The versions are those that go.mod names.
.build/staticcheck: go.mod
	go build -o $@ honnef.co/go/tools/cmd/staticcheck

.build/gotestsum: go.mod
	go build -o $@ gotest.tools/gotestsum

.build/deadcode: go.mod
	go build -o $@ golang.org/x/tools/cmd/deadcode

page: modules
	node web/model/generate.mjs --check
	node web/layers.mjs
	cd web && node_modules/.bin/biome check .
	$(TSC) --noEmit -p web
	$(TSC) --noEmit -p web/testing
	go run ./internal/site test

# The page's types, after a schema in data/schema was changed.
types: modules
	node web/model/generate.mjs

modules:
	go run ./internal/site modules

# The race detector needs a C compiler.
RACE = $$(if [ "$$(go env CGO_ENABLED)" = 1 ] && command -v "$$(go env CC)" >/dev/null; then echo -race; \
	else echo "No C compiler: testing without the race detector." >&2; fi)

unit: .build/gotestsum
	$(call tested,-- $(UNITS),unit)

# A race takes two goroutines, and the program has one: it is called by the page,
# call by call. Only the bridge promises more, and only its tests that say so in
# their name start any; the race detector, under which code is ten times slower,
# would find nothing in the others.
race:
	go test $(RACE) -count=1 -v -run Concurrently ./internal/bridge | tee .build/race.txt
	@grep -q '^--- PASS' .build/race.txt
	@! grep -rlE '\<go func\(|\.Go\(' --include='*_test.go' internal data | grep -v -e ^internal/browsertest/ -e ^internal/bridge/ || \
		{ echo "These tests start goroutines: add their package to the race lane." >&2; exit 1; }

smoke:
	.ci/fuzz 2s

# Three browsers on two cores: a machine that is busy elsewhere makes a test run out
# of patience that has nothing to find. A few that failed (six with the tests they
# are part of) run once more, by themselves, and are told; a fault fails again.
AGAIN = --rerun-fails=1 --rerun-fails-max-failures=6 --rerun-fails-report=.build/again.txt

browser: browsers poppler .build/gotestsum
	$(call tested,$(AGAIN) --packages ./internal/browsertest -- -count=1 -timeout 60m,browser)
	@if [ -s .build/again.txt ]; then echo "Failed at first, and once more by itself not (look into it, the machine may have been busy):"; cat .build/again.txt; fi

browsers: chromium firefox webkit

chromium:
	@.ci/chromium

firefox:
	@.ci/xvfb
	@.ci/firefox

webkit:
	@.ci/xvfb
	@.ci/webkit

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
