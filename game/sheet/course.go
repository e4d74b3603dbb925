package sheet

import (
	"embed"
	"path"
	"sync"
)

// The sheets that come with the program, in the order of their file names.
//
//go:embed course
var course embed.FS

// Course returns the sheets that come with the program, from what is easiest to
// hear to what is hardest.
var Course = sync.OnceValue(func() []*Sheet {
	files, err := course.ReadDir("course")
	if err != nil {
		panic("sheet: " + err.Error()) // it is built in
	}
	var all []*Sheet
	for _, f := range files {
		data, err := course.ReadFile(path.Join("course", f.Name()))
		if err != nil {
			panic("sheet: " + err.Error())
		}
		s, err := Parse(data)
		if err != nil {
			panic("sheet: " + f.Name() + ": " + err.Error()) // a test reads it
		}
		all = append(all, s)
	}
	return all
})

// Matches returns the matches of the course on one sheet.
func Matches() *Sheet {
	all := &Sheet{Version: Version, Title: "Matches"}
	for _, s := range Course() {
		for _, e := range s.Exercises {
			if e.Kind == Match {
				all.Exercises = append(all.Exercises, e)
			}
		}
	}
	return all
}
