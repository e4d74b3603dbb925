package browser

import "testing"

func TestWhoseKeysTheyAre(t *testing.T) {
	for _, key := range []string{" ", "Enter", "Escape", "ArrowLeft", "ArrowUp", "Home", "End", "PageUp", "PageDown", "a", "T", "é", "7", "+", "-"} {
		if k := (keystroke{key: key}); !k.ours() {
			t.Errorf("the app does not get %q", key)
		}
		for name, k := range map[string]keystroke{
			"Control": {key: key, ctrl: true}, "Alt": {key: key, alt: true}, "Meta": {key: key, meta: true},
			"a half-made letter": {key: key, composing: true},
		} {
			if k.ours() {
				t.Errorf("the app takes %q with %s", key, name)
			}
		}
	}
	for _, key := range []string{"Tab", "F1", "F5", "F12", "Shift", "Control", "Alt", "Meta", "Dead", "Process", "Unidentified",
		"ContextMenu", "PrintScreen", "MediaPlayPause", "BrowserBack", "/", "'", ""} {
		if k := (keystroke{key: key}); k.ours() {
			t.Errorf("the app takes %q", key)
		}
	}
}

func TestOnlyMovingKeysRepeat(t *testing.T) {
	for _, key := range []string{"ArrowLeft", "ArrowRight", "ArrowUp", "ArrowDown", "PageUp", "PageDown", "+", "-"} {
		if !repeats(key) {
			t.Errorf("%q does not repeat", key)
		}
	}
	for _, key := range []string{" ", "Enter", "h", "Home", "Escape"} {
		if repeats(key) {
			t.Errorf("%q repeats", key)
		}
	}
}
