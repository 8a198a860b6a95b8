# Needs Go, Node.js with npm, and make.
#
#   make run     build the page and serve it on this machine
#   make build   write the static site to dist/
#   make test    everything that must hold before a change goes in
#   make fuzz    every fuzz target for FUZZTIME each
#   make bench   one table of measured figures
#   make clean   remove what these made

ADDR     ?= 127.0.0.1:8173
FUZZTIME ?= 2m

.PHONY: run build test fuzz bench clean

run:
	go run ./internal/site serve -addr $(ADDR)

build:
	go run ./internal/site build

clean:
	rm -rf dist .build web/node_modules bench.txt
