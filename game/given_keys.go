package game

import "strings"

// worked says whether anything was done whose id has a prefix.
func (k *progress) worked(prefix string) bool {
	return some(k.Marks, prefix) || some(k.Log, prefix) || some(k.Left, prefix) || some(k.Runs, prefix)
}

// move keeps what was done under one prefix under another; none where that is empty.
func (k *progress) move(from, to string) {
	moveKeys(k.Marks, from, to)
	moveKeys(k.Log, from, to)
	moveKeys(k.Left, from, to)
	moveKeys(k.Runs, from, to)
	moveKeys(k.Limits, from, to)
	moveKeys(k.Tables, from, to)
	for i := range k.History {
		if id, ok := strings.CutPrefix(k.History[i].Exercise, from); ok && to != "" {
			k.History[i].Exercise = to + id
		}
	}
}

func some[V any](m map[string]V, prefix string) bool {
	for id := range m {
		if strings.HasPrefix(id, prefix) {
			return true
		}
	}
	return false
}

func moveKeys[V any](m map[string]V, from, to string) {
	moved := map[string]V{}
	for id, v := range m {
		if rest, ok := strings.CutPrefix(id, from); ok {
			delete(m, id)
			moved[to+rest] = v
		}
	}
	if to == "" {
		return
	}
	for id, v := range moved {
		m[id] = v
	}
}
