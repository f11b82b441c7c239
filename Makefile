GO ?= go
OUT ?= case
SEED ?= 1
CHECKS ?= 8

.PHONY: build page test soak demo bench lint golden fuzz clean

build: ## the program, as ./forel
	CGO_ENABLED=0 $(GO) build -o forel ./cmd/forel

page: ## the page in a browser, as ./forel.html: one file, opened by a double click
	$(GO) run ./cmd/page/build -o forel.html

test: ## all tests; their random cases are few, and the same each time for a SEED
	GOGC=400 RAPID_SEED=$(SEED) RAPID_CHECKS=$(CHECKS) $(GO) test ./... # GOGC: memory for speed

soak: ## all tests with many random cases, others each time
	RAPID_SEED=0 RAPID_CHECKS=1000 $(GO) test -count=1 -timeout 0 ./...

demo: ## the templates of the invented example, in case/ or OUT
	$(GO) run ./cmd/forel templates --example --out $(OUT)/

bench: ## speed and allocations
	$(GO) test -run '^$$' -bench . -benchmem ./...

lint: ## formatting and vet
	@test -z "$$(gofmt -l .)" || { gofmt -l .; echo "run gofmt -w on these"; exit 1; }
	$(GO) vet ./...

golden: ## write the files of the worked jobs in testdata again; read the difference before committing it
	$(GO) test ./cmd/forel -run TestWorkedJobs -update

fuzz: ## a minute of each fuzz target
	$(GO) test -run '^$$' -fuzz FuzzParseLength -fuzztime 60s -fuzzminimizetime 20x ./geometry
	$(GO) test -run '^$$' -fuzz FuzzJobToProof -fuzztime 60s -fuzzminimizetime 20x ./geometry/slipcase
	$(GO) test -run '^$$' -fuzz FuzzParse -fuzztime 60s -fuzzminimizetime 20x ./cmd/jobfile

clean: ## remove ./forel and the demo's files
	rm -rf forel forel.html $(OUT)
