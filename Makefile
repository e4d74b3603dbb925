# `make run` needs Go and make only; `make test` also installs Chromium, a font of emoji, Firefox with a
# display and a sound server that need no hardware, and SoX, where they are missing.

PORT ?= 8080
OUT ?= .build/site
APT = $$(test "$$(id -u)" = 0 || echo sudo) apt-get
HEADING = @printf '\n== %s\n'

.PHONY: help run test site bench fuzz clean format vet chromium emoji firefox sox tests

help:
	@echo 'make run     build the app and serve it on http://localhost:$(PORT) (PORT=8081 make run for another port)'
	@echo 'make test    run every check, the app in headless Chromium and Firefox included'
	@echo 'make site    write the app as static files to $(OUT) (OUT=folder make site for another folder)'
	@echo 'make bench   measure speed, natively and, where node is installed, as WebAssembly'
	@echo 'make fuzz    throw random descriptions, sheets, files and links at it (FUZZTIME=10m make fuzz for longer)'
	@echo 'make clean   remove what the other commands made'

run:
	@go run ./cmd/desk serve -port $(PORT)

site:
	@go run ./cmd/desk site -o $(OUT)

# One after the other, also under make -j.
test:
	@$(MAKE) --no-print-directory format
	@$(MAKE) --no-print-directory vet
	@$(MAKE) --no-print-directory chromium
	@$(MAKE) --no-print-directory emoji
	@$(MAKE) --no-print-directory firefox
	@$(MAKE) --no-print-directory sox
	@$(MAKE) --no-print-directory tests
	@$(MAKE) --no-print-directory fuzz

format:
	$(HEADING) 'Formatting'
	@files=$$(gofmt -l .) || exit 1; test -z "$$files" || \
	{ echo 'These files are not formatted; run gofmt -w on them:'; echo "$$files"; exit 1; }

vet:
	$(HEADING) 'Vet, native'
	@go vet ./...
	$(HEADING) 'Vet, WebAssembly'
	@GOOS=js GOARCH=wasm go vet ./...
	$(HEADING) 'Vet, the engine'
	@GOOS=wasip1 GOARCH=wasm go vet ./cmd/engine ./game/engine

chromium:
	$(HEADING) 'Chromium'
	@if test -n "$$BROWSER"; then echo "Using $$BROWSER, as BROWSER says."; \
	elif command -v chromium || command -v google-chrome; then :; \
	elif command -v apt-get >/dev/null; then $(APT) update && $(APT) install -y --no-install-recommends chromium; \
	else echo 'Chromium is missing and there is no apt-get to install it. Install Chromium by hand, or name a browser: BROWSER=/path/to/chromium make test'; exit 1; fi

# A test looks for colours in an emoji that the browser has lettered; other systems than Linux have a font.
emoji:
	$(HEADING) 'Emoji'
	@if test "$$(uname)" != Linux || fc-list :lang=und-zsye family 2>/dev/null | grep .; then :; \
	elif command -v apt-get >/dev/null; then $(APT) update && $(APT) install -y --no-install-recommends fonts-noto-color-emoji; \
	else echo 'A font with coloured emoji is missing and there is no apt-get to install it. Install one by hand, for example Noto Color Emoji.'; exit 1; fi

# Firefox draws WebGL on an X display and plays through a sound server; the tests start their own.
firefox:
	$(HEADING) 'Firefox'
	@want=''; \
	if test -n "$$FIREFOX"; then echo "Using $$FIREFOX, as FIREFOX says."; \
	else command -v firefox-esr || command -v firefox || want='firefox-esr'; fi; \
	command -v Xvfb || want="$$want xvfb libgl1-mesa-dri"; \
	command -v pulseaudio || want="$$want pulseaudio"; \
	if test -z "$$want"; then :; \
	elif command -v apt-get >/dev/null && $(APT) update && $(APT) install -y --no-install-recommends $$want; then :; \
	else echo "These are missing and apt-get cannot install them: $$want. Install them by hand, or name a browser: FIREFOX=/path/to/firefox make test"; exit 1; fi

# Reads back the WAV files that desk writes.
sox:
	$(HEADING) 'SoX'
	@if command -v sox; then :; \
	elif command -v apt-get >/dev/null; then $(APT) update && $(APT) install -y --no-install-recommends sox; \
	else echo 'SoX is missing and there is no apt-get to install it. Install it by hand: the tests read WAV files back with it.'; exit 1; fi

# The browser gets the machine to itself: it plays sound in real time. vet has looked at everything.
tests:
	$(HEADING) 'Tests'
	@go test -vet=off -shuffle=on -timeout=20m $$(go list ./... | grep -v '/cmd/partialcredit$$')
	$(HEADING) 'Tests in the browser'
	@go test -vet=off -shuffle=on -timeout=30m ./cmd/partialcredit

bench:
	$(HEADING) 'Benchmarks, native'
	@go test -run='^$$' -bench=. -benchmem $$(go list ./synth/... ./game/... 2>/dev/null)
	@if command -v node >/dev/null; then printf '\n== %s\n' 'Benchmarks, WebAssembly under node'; \
	for p in $$(go list ./synth/... ./game/mark 2>/dev/null); do \
	env -i HOME="$$HOME" PATH="$$PATH:$$(go env GOROOT)/lib/wasm" GOOS=js GOARCH=wasm go test -run='^$$' -bench=. -benchmem $$p || exit 1; done; fi

FUZZERS = synth.FuzzSound game.FuzzProgress synth.FuzzDescription game.FuzzImport game/sheet.FuzzParse \
	game.FuzzFollow game/slip.FuzzRead game/link.FuzzUnpack synth/wav.FuzzRead

# How many inputs each gets, some seconds' worth. They are counted: when a time is up in the midst of an
# input, go test now and then reports a failure that is none (context deadline exceeded; Go 1.26).
synth.FuzzSound = 3000x
synth.FuzzDescription = 60000x
synth/wav.FuzzRead = 50000x
game.FuzzProgress = 600x
game.FuzzImport = 600x
game.FuzzFollow = 1500x
game/sheet.FuzzParse = 10000x
game/slip.FuzzRead = 2500x
game/link.FuzzUnpack = 80000x

# go test takes one fuzzer at a time; two of them at once keep two processors busy also
# while they are linked. Shrinking what is merely new would take up the time.
fuzz:
	$(HEADING) 'Fuzzing'
	@$(MAKE) --no-print-directory -j2 $(FUZZERS)

.PHONY: $(FUZZERS)
$(FUZZERS):
	@go test -vet=off -run='^$$' -fuzz='^$(subst .,,$(suffix $@))$$' -fuzztime=$(or $(FUZZTIME),$($@)) -fuzzminimizetime=10x ./$(basename $@)

clean:
	rm -rf .build
