# Moldwright: `make` builds dist/moldwright.html, `make test` checks everything.

DIST := dist
GO_FILES := $(shell find core wasm -name '*.go' -not -name '*_test.go') $(shell find core -path '*/fonts/*') go.mod go.sum
SITE_FILES := $(shell find site/src site/samples -type f) site/index.html site/build.mjs site/tsconfig.json site/package-lock.json

.PHONY: all build run hosted gallery test bench bench-core clean
all: build

build: $(DIST)/moldwright.html

run: build
	node site/tools/sample.mjs

hosted: build
	node site/tools/hosted.mjs

gallery: build
	node site/tools/gallery.mjs

test:
	@node site/test/all.mjs

bench: build
	node site/tools/bench.mjs

# every Go benchmark of the rooms, one by one
bench-core:
	go test -run='^$$' -bench=. -benchmem ./core/...

clean:
	rm -rf $(DIST) site/node_modules

$(DIST)/core.wasm: $(GO_FILES) $(DIST)/without.json
	GOOS=js GOARCH=wasm go build -overlay $(DIST)/without.json -trimpath -buildvcs=false -tags latex -ldflags="-s -w" -o $@ ./wasm

# Packages of Go's own library that ours bring along and never use; what wasm/without
# holds stands for them in the page's core.
WITHOUT := encoding/gob image/gif mime net/http

$(DIST)/without.json: go.mod Makefile $(shell find wasm/without -name '*.go')
	mkdir -p $(DIST)
	GOOS=js GOARCH=wasm go list -f '{{range .GoFiles}}"{{$$.Dir}}/{{.}}":"",{{end}}"{{.Dir}}/without.go":"$(CURDIR)/wasm/without/{{.ImportPath}}/without.go"' $(WITHOUT) | paste -sd, | sed 's/.*/{"Replace":{&}}/' > $@

$(DIST)/wasm_exec.js: go.mod
	mkdir -p $(DIST)
	cp "$$(go env GOROOT)/lib/wasm/wasm_exec.js" $@
	touch $@

site/node_modules/.installed: site/package.json site/package-lock.json
	cd site && npm ci --no-audit --no-fund
	touch $@

$(DIST)/moldwright.html: $(DIST)/core.wasm $(DIST)/wasm_exec.js site/node_modules/.installed $(SITE_FILES)
	cd site && npx tsc --noEmit
	node site/build.mjs
