#!/bin/sh
# Makes the two fonts of this folder from the complete Go fonts of golang.org/x/image: without them
# Greek, Cyrillic, box drawing and instructions for coarse screens would be a tenth of a megabyte of
# every first visit. Needs Go and pyftsubset (Debian's package fonttools; these were made with 4.38.0).
# Run it after a change of the list below or of the module; game/view's tests compare the result with
# the complete fonts.
set -eu
cd "$(dirname "$0")"
source=$(go list -m -f '{{.Dir}}' golang.org/x/image)/font/gofont/ttfs

# Latin-1 and Latin Extended-A (with them the soft hyphen), general punctuation with the primes, the
# euro sign, fractions, arrows, mathematical signs with minus and bullet operator, geometric
# shapes, music: whatever of these the fonts have.
unicodes=0020-007E,00A0-017F,0218-021B,2010-205E,20AC,2150-215F,2190-21FF,2200-22FF,25A0-25FF,2669-266F

for font in Go-Regular Go-Bold; do
	pyftsubset "$source/$font.ttf" --output-file=$font.ttf --unicodes=$unicodes \
		--no-hinting --layout-features= --no-glyph-names --name-IDs=0,1,2,13,14 --name-languages=0x409 \
		--no-recalc-bounds --no-recalc-timestamp
done
