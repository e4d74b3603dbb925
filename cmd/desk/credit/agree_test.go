package credit

import (
	"encoding/json"
	"math"
	"sync"
	"testing"

	"partialcredit/cmd/desk/measure"
	"partialcredit/cmd/desk/site"
)

// The marks are the same natively and as WebAssembly in the browser: within
// 0.1 (the brief).
func TestMarksAgree(t *testing.T) {
	t.Parallel()
	root, err := site.FindRoot()
	if err != nil {
		t.Fatal(err)
	}
	var native []float64
	var amiss error
	var done sync.WaitGroup
	done.Go(func() { native, amiss = Agreement() })
	printed, err := measure.RunInBrowser(root, "./cmd/desk/credit/agree")
	done.Wait()
	if err != nil || amiss != nil {
		t.Fatal(err, amiss)
	}
	var wasm []float64
	if err := json.Unmarshal([]byte(printed), &wasm); err != nil {
		t.Fatalf("the browser printed %q: %v", printed, err)
	}
	if len(wasm) != len(native) || len(native) < 70 {
		t.Fatalf("%d marks natively, %d in the browser", len(native), len(wasm))
	}
	most := 0.0
	for i, m := range native {
		most = math.Max(most, math.Abs(m-wasm[i]))
		if !(math.Abs(m-wasm[i]) <= 0.1) {
			t.Errorf("case %d: %.3f marks natively, %.3f in the browser", i, m, wasm[i])
		}
	}
	t.Logf("%d cases, at most %.6f marks apart", len(native), most)
}
