//go:build !js

package main_test

import (
	_ "embed"
	"encoding/json"
	"fmt"
	"strings"
	"testing"

	"partialcredit/game/ask"
	"partialcredit/game/practice"
)

//go:embed testdata/axe/axe.min.js
var axe string

// audited are the rules that an audit runs: levels A and AA of WCAG 2.0 to 2.2 (W3C) and what axe-core
// calls best practice.
var audited = []string{"wcag2a", "wcag2aa", "wcag21a", "wcag21aa", "wcag22aa", "best-practice"}

// unsettled lists by rule what axe-core cannot decide by itself on this page, and what a person found.
var unsettled = map[string]string{}

// A finding is what axe-core says of one rule.
type finding struct {
	ID, Impact, Help string
	Nodes            []struct {
		HTML           string
		FailureSummary string
	}
}

func (f *finding) String() string {
	s := fmt.Sprintf("%s (%s): %s", f.ID, f.Impact, f.Help)
	for _, n := range f.Nodes {
		s += "\n  " + n.HTML + "\n    " + strings.ReplaceAll(n.FailureSummary, "\n", "\n    ")
	}
	return s
}

// audit runs axe-core over what the page shows. It fails for every violation, and for everything that
// axe-core leaves open and nobody has looked at (unsettled). The protocol evaluates it, which the
// page's content security policy does not concern.
func audit(p *Page, where string) {
	p.t.Helper()
	for _, f := range findings(p, where) {
		p.t.Errorf("%s: %s", where, f)
	}
}

func findings(p *Page, where string) (failed []string) {
	p.t.Helper()
	tags, err := json.Marshal(audited)
	if err != nil {
		p.t.Fatal(err)
	}
	var loaded bool
	if p.Eval("!!window.axe", &loaded); !loaded {
		p.Eval("(() => {"+axe+"})()", nil)
	}
	var result struct {
		Violations, Incomplete []finding
		Passes                 int
	}
	// No pointer reaches the mirror, so axe-core would not look at the sizes of what a finger meets on the
	// canvas in the same places.
	const reach = `document.querySelectorAll("[data-widget]:not(.field)").forEach(e => e.style.pointerEvents = "%s")`
	p.Eval(fmt.Sprintf(reach, "auto"), nil)
	defer p.Eval(fmt.Sprintf(reach, "none"), nil)
	p.Eval(fmt.Sprintf(`axe.run(document, { runOnly: { type: "tag", values: %s }, resultTypes: ["violations", "incomplete"] })
		.then(r => ({ violations: r.violations, incomplete: r.incomplete, passes: r.passes.length }))`, tags), &result)
	// Beside what is wholly transparent axe-core sees no neighbours, so what lies too close together is looked
	// for once more with the mirror to be seen. What is seen of it there is not what is drawn, so it is only that.
	const shown = `document.querySelectorAll("#mirror > *, [data-widget]:not(.field)").forEach(e => e.style.opacity = e.tagName === "DIV" ? 1 : %d)`
	p.Eval(fmt.Sprintf(shown, 1), nil)
	defer p.Eval(fmt.Sprintf(shown, 0), nil)
	var sizes struct{ Violations, Incomplete []finding }
	p.Eval(`axe.run(document, { runOnly: { type: "rule", values: ["target-size"] }, resultTypes: ["violations", "incomplete"] })
		.then(r => ({ violations: r.violations, incomplete: r.incomplete }))`, &sizes)
	result.Violations, result.Incomplete = append(result.Violations, sizes.Violations...), append(result.Incomplete, sizes.Incomplete...)
	p.t.Logf("%s: %d rules passed, %d violated, %d left open", where, result.Passes, len(result.Violations), len(result.Incomplete))
	if result.Passes < 5 {
		failed = append(failed, fmt.Sprintf("only %d rules found anything to check", result.Passes))
	}
	for _, f := range result.Violations {
		failed = append(failed, f.String())
	}
	for _, f := range result.Incomplete {
		if why, ok := unsettled[f.ID]; ok {
			p.t.Logf("%s: left open: %s, on %d elements: %s", where, f.ID, len(f.Nodes), why)
			continue
		}
		failed = append(failed, "nobody has looked at this: "+f.String())
	}
	return failed
}

// holdLoading keeps the app from coming, so that the loading page stays.
const holdLoading = `
const load = window.fetch;
window.fetch = function (address) {
	return String(address).includes('app') ? new Promise(() => {}) : load.apply(this, arguments);
};`

func TestAudit(t *testing.T) {
	t.Run("loading", func(t *testing.T) {
		p := Open(t, Visit{Screen: Tablet, Before: []string{holdLoading}})
		p.WaitText("#loading-text", "Loading 0.0", limit)
		audit(p, "the loading page")
	})
	t.Run("phone", func(t *testing.T) {
		k := at("beats")
		k.Hinted = false
		l := resume(t, k, Visit{Screen: Phone})
		l.settle()
		audit(l.Page, "an exercise at work")
		l.press("target")
		l.shows("comfortable")
		audit(l.Page, "the hint about the volume")
		l.press("comfortable")
		l.shows("hand in")
		l.press("hand in")
		l.shows("next")
		audit(l.Page, "a marked exercise")
		l.press("contents")
		l.shows("course")
		audit(l.Page, "a sheet")
	})
	t.Run("the other pages", func(t *testing.T) {
		name, limit := exerciseOf(t, "higher-lower"), exerciseOf(t, "limit-pitch")
		_, nth := whereIs(t, limit.ID)
		whole := simulated(limit, 3, above(10))
		table := practice.Confusion{}
		table.Add(name.Answers[0].Name, name.Answers[1].Name)
		k := Kept{Version: 2, Exercise: limit.ID, Page: "sheet", Volume: 0.3, Hinted: true,
			Runs: map[string]ask.Run{limit.ID: but(whole, 1)}, More: map[string]any{
				"boxes":   practice.Boxes{name.ID + "/" + name.Answers[0].Name: {}},
				"tables":  map[string]*practice.Confusion{name.ID: &table},
				"history": []any{map[string]any{"day": 20000, "exercise": name.ID, "marks": 80}},
			}}
		l := resume(t, k, Visit{Screen: Phone})
		for _, tt := range []struct {
			press []string
			shows string
			what  string
		}{
			{[]string{"exercise 0"}, "sweep 0", "a demonstration"},
			{[]string{"contents", fmt.Sprintf("exercise %d", nth)}, "listen", "a question"},
			{[]string{fmt.Sprintf("answer %d", whole.Answers[len(whole.Answers)-1])}, "proceed", "an answer"},
			{[]string{"proceed"}, "again", "the result of a limit"},
			{[]string{"contents", "course"}, "sheet 0", "the contents"},
			{[]string{"bench"}, "link", "the bench"},
			{[]string{"course", "practice"}, "begin", "practice"},
			{[]string{"course", "progress", "view 0"}, "export", "the marks"},
			{[]string{"view 1"}, "export", "the confusions"},
			{[]string{"view 2"}, "export", "the limits"},
			{[]string{"erase"}, "erase all", "the question before erasing"},
			{[]string{"keep", "course", "help"}, "letters", "the help"},
			{[]string{"course", "teacher"}, "new sheet", "the teacher's sheets"},
			{[]string{"new sheet"}, "vary", "a sheet that is written"},
			{[]string{"side 0", "add"}, "tab 4", "an exercise that is written"},
			{[]string{"tab 1"}, "suggest", "its texts"},
			{[]string{"sheet page", "teacher", "book"}, "leaf 5", "the mark book"},
			{[]string{"teacher", "course", "bench", "link"}, "copy", "a sound that is handed out"},
		} {
			for _, id := range tt.press {
				l.press(id)
			}
			l.shows(tt.shows)
			audit(l.Page, tt.what)
		}
	})
	t.Run("desktop", func(t *testing.T) {
		l := resume(t, at("beats"), Visit{})
		l.settle()
		audit(l.Page, "an exercise at work")
	})
}

// TestAuditFinds breaks the page in several ways that must be found.
func TestAuditFinds(t *testing.T) {
	l := resume(t, at("beats"), Visit{})
	for _, tt := range []struct{ rule, damage string }{
		{"label", `document.querySelector('` + widget("control 0") + `').removeAttribute('aria-label')`},
		{"button-name", `document.querySelector('` + widget("target") + `').textContent = ''`},
		{"target-size", `for (const id of ['yours', 'turn']) { const s = document.querySelector('[data-widget="' + id + '"]').style; s.width = s.height = '12px'; s.top = '300px'; s.left = id === 'turn' ? '314px' : '300px'; }`},
		{"html-has-lang", `document.documentElement.removeAttribute('lang')`},
		{"document-title", `document.title = ''`},
		{"page-has-heading-one", `document.querySelector('#mirror h1').remove()`},
		{"region", `document.body.insertAdjacentHTML('beforeend', '<p>Outside</p>')`},
	} {
		l.Eval("(() => {"+tt.damage+"})()", nil)
		found := findings(l.Page, "damaged: "+tt.rule)
		if !strings.Contains(strings.Join(found, "\n"), "\n"+tt.rule+" (") && !strings.HasPrefix(strings.Join(found, "\n"), tt.rule+" (") {
			t.Errorf("the audit does not notice: %s; it found %q", tt.damage, found)
		}
	}
}

// shows waits until a widget is there and has been drawn.
func (l *learner) shows(id string) {
	l.t.Helper()
	l.Wait(`document.querySelector('`+widget(id)+`')`, limit)
	l.settle()
}
