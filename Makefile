GO ?= go
OUT ?= case
SEED ?= 1
CHECKS ?= 5
KILLS ?= 1000
# Nothing here needs C, and without it linking is faster.
export CGO_ENABLED = 0

.PHONY: build dist again notice page test soak demo bench lint golden fuzz clean

build: ## the program, as ./forel
	$(GO) build -trimpath -o forel ./cmd/forel

SYSTEMS = linux-amd64 linux-arm64 darwin-amd64 darwin-arm64 windows-amd64 windows-arm64
SHIPPED = -trimpath -buildvcs=auto -ldflags='-s -w' # the revision stands in it

dist: $(SYSTEMS:%=dist-%) ## what is handed on, in dist/: a program for each system, the page, licences, checksums
	cp NOTICE README.md dist/
	$(GO) run ./cmd/page/build -o dist/forel.html
	cd dist && rm -f SHA256SUMS && { sha256sum * || shasum -a 256 *; } > ../SHA256SUMS && mv ../SHA256SUMS .

dist-%:
	GOOS=$(word 1,$(subst -, ,$*)) GOARCH=$(word 2,$(subst -, ,$*)) $(GO) build $(SHIPPED) -o dist/forel-$*$(if $(findstring windows,$*),.exe) ./cmd/forel

again: dist ## make dist once more, from a copy elsewhere and with nothing kept: the same bytes
	@set -e; copy=$$(mktemp -d); trap 'rm -rf '$$copy EXIT; git clone -q . $$copy/forel; \
	GOCACHE=$$copy/cache $(MAKE) -s -C $$copy/forel dist SYSTEMS='$(SYSTEMS)'; \
	diff dist/SHA256SUMS $$copy/forel/dist/SHA256SUMS && echo "the same bytes"

notice: ## write NOTICE again: the licences of all that is linked in
	$(GO) run ./cmd/notice > NOTICE.part && mv NOTICE.part NOTICE

page: ## the page in a browser, as ./forel.html: one file, opened by a double click; a web server wants forel-offline.js too
	$(GO) run ./cmd/page/build -o forel.html

test: ## all tests; their random cases are few, and the same each time for a SEED; with CI=true the page in a browser too
	GOGC=400 RAPID_SEED=$(SEED) RAPID_CHECKS=$(CHECKS) $(GO) test $(if $(CI),,-short) $(if $(filter 1-5,$(SEED)-$(CHECKS)),,-count=1) ./... # GOGC: memory for speed; go keeps results whatever the SEED

soak: ## all tests with many random cases, others each time; each command is killed KILLS times
	RAPID_SEED=0 RAPID_CHECKS=1000 KILLS=$(KILLS) $(GO) test -count=1 -timeout 0 ./...

demo: ## the templates of the invented example, in case/ or OUT
	$(GO) run ./cmd/forel templates --example --out $(OUT)/

bench: ## speed and allocations
	$(GO) test -run '^$$' -bench . -benchmem ./...

lint: ## formatting and vet
	@test -z "$$(gofmt -l .)" || { gofmt -l .; echo "run gofmt -w on these"; exit 1; }
	$(GO) vet ./...

golden: ## write the files of the worked jobs in testdata again; read the difference before committing it
	$(GO) test ./cmd/forel -run 'TestWorked|TestPriced' -update

fuzz: ## a minute of each fuzz target
	$(GO) test -run '^$$' -fuzz FuzzParseLength -fuzztime 60s -fuzzminimizetime 20x ./geometry
	$(GO) test -run '^$$' -fuzz FuzzJobToProof -fuzztime 60s -fuzzminimizetime 20x ./geometry/slipcase
	$(GO) test -run '^$$' -fuzz FuzzParse -fuzztime 60s -fuzzminimizetime 20x ./cmd/jobfile
	$(GO) test -run '^$$' -fuzz FuzzShop -fuzztime 60s -fuzzminimizetime 20x ./cmd/jobfile

clean: ## remove what is built, and the demo's files
	rm -rf forel forel.html forel-offline.js dist $(OUT)
