package words

import (
	"embed"
	"encoding/json"
	"maps"
	"path"
	"sync"
)

// The table of German lies in several files, by what the sentences are about.
//
//go:embed german
var german embed.FS

// German is read when it is first asked for.
var German = sync.OnceValue(func() *Language {
	l := &Language{Tag: "de", Name: "Deutsch", decimal: ",", texts: map[string]string{}}
	files, err := german.ReadDir("german")
	if err != nil {
		panic("words: " + err.Error()) // it is built in
	}
	for _, f := range files {
		data, err := german.ReadFile(path.Join("german", f.Name()))
		var texts map[string]string
		if err == nil {
			err = json.Unmarshal(data, &texts)
		}
		if err != nil {
			panic("words: " + f.Name() + ": " + err.Error()) // a test reads it
		}
		if f.Name() == "refusals.json" {
			l.forms = formed(texts)
		}
		maps.Copy(l.texts, texts)
	}
	return l
})
