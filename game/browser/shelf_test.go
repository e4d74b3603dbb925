package browser

import (
	"strings"
	"testing"
)

func TestShelf(t *testing.T) {
	kept := map[string]string{}
	var broken error
	s := shelf{
		get: func(key string) (string, bool, error) { v, ok := kept[key]; return v, ok, broken },
		set: func(key, value string) error {
			if broken == nil {
				kept[key] = value
			}
			return broken
		},
	}
	if got := s.load("a"); got != nil {
		t.Errorf("%q before anything was kept", got)
	}
	if err := s.save("a", []byte(`{"é":1}`)); err != nil {
		t.Fatal(err)
	}
	if got := s.load("a"); string(got) != `{"é":1}` {
		t.Errorf("%q came back", got)
	}
	if err := s.save("a", []byte{0xff}); err == nil {
		t.Error("what is not text was kept")
	}

	for _, tt := range []struct {
		err  error
		says string
	}{{errFull, "full"}, {errClosed, "keeps nothing"}} {
		broken = tt.err
		if got := s.load("a"); got != nil {
			t.Errorf("%v: %q came back", tt.err, got)
		}
		err := s.save("a", nil)
		if err == nil || !strings.Contains(err.Error(), tt.says) {
			t.Errorf("%v: the learner reads %v", tt.err, err)
		}
		if err := s.save("a", nil); err != nil {
			t.Errorf("%v: said again: %v", tt.err, err)
		}
		broken = nil
		if err := s.save("a", []byte("x")); err != nil {
			t.Errorf("when it works again: %v", err)
		}
	}
}
