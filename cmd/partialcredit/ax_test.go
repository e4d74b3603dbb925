//go:build !js

package main_test

import (
	"context"
	"encoding/json"
	"fmt"
	"slices"
	"strings"

	"github.com/chromedp/cdproto/cdp"
	"github.com/chromedp/cdproto/dom"
	"github.com/chromedp/cdproto/input"
	"github.com/chromedp/cdproto/runtime"
	"github.com/chromedp/chromedp"
)

// An ax is a learner who has the keyboard and the page's accessibility tree and nothing else: no
// pixels, no DOM, no pointer. Names and roles are those of WAI-ARIA 1.2 as the browser computes them
// and hands them to a screen reader.
type ax struct{ *Page }

// An axNode is one node of the tree.
type axNode struct {
	ID       string   `json:"nodeId"`
	Ignored  bool     `json:"ignored"`
	Role     axValue  `json:"role"`
	Name     axValue  `json:"name"`
	Value    axValue  `json:"value"`
	Children []string `json:"childIds"`
	Element  int64    `json:"backendDOMNodeId"`
	States   []struct {
		Name  string  `json:"name"`
		Value axValue `json:"value"`
	} `json:"properties"`
}

type axValue struct {
	Value any `json:"value"`
}

func (v axValue) String() string {
	if v.Value == nil {
		return ""
	}
	return fmt.Sprint(v.Value)
}

// State is a state or property such as "focused", "disabled" or "pressed"; "" where it is
// not told.
func (n *axNode) State(name string) string {
	for _, s := range n.States {
		if s.Name == name {
			return s.Value.String()
		}
	}
	return ""
}

// nodes reads the whole tree, as it is once the app has taken everything. The protocol library refuses
// trees with properties newer than itself, so they are read here.
func (a ax) nodes() []axNode {
	a.t.Helper()
	(&learner{Page: a.Page}).settle()
	return a.now()
}

// now reads the tree without waiting for the app.
func (a ax) now() []axNode {
	a.t.Helper()
	var tree struct {
		Nodes []axNode `json:"nodes"`
	}
	a.do("reading the accessibility tree", chromedp.ActionFunc(func(ctx context.Context) error {
		return cdp.Execute(ctx, "Accessibility.getFullAXTree", nil, &tree)
	}))
	return slices.DeleteFunc(tree.Nodes, func(n axNode) bool { return n.Ignored && n.Role.String() != "none" })
}

// Find is the one node with that role whose name is name or, where none is, begins with it.
func (a ax) Find(role, name string) (axNode, bool) {
	a.t.Helper()
	nodes := a.nodes()
	for _, fits := range []func(string) bool{
		func(s string) bool { return s == name },
		func(s string) bool { return strings.HasPrefix(s, name) },
	} {
		for _, n := range nodes {
			if n.Role.String() == role && fits(n.Name.String()) {
				return n, true
			}
		}
	}
	return axNode{}, false
}

// all lists what there is, for a failure.
func (a ax) all() string {
	var s []string
	for _, n := range a.nodes() {
		switch n.Role.String() {
		case "button", "slider", "heading", "radio", "checkbox":
			s = append(s, fmt.Sprintf("%s %q", n.Role, n.Name))
		}
	}
	return strings.Join(s, ", ")
}

// Go walks with the Tab key until the focus is on the node with that role and name.
func (a ax) Go(role, name string) axNode {
	a.t.Helper()
	want, ok := a.Find(role, name)
	if !ok {
		a.t.Fatalf("there is no %s %q; there are: %s", role, name, a.all())
	}
	if want.State("disabled") == "true" {
		a.t.Fatalf("the %s %q is disabled", role, want.Name)
	}
	for range 80 {
		for _, n := range a.now() { // the focus is the browser's own
			if n.State("focused") == "true" && n.Role.String() == role && n.Name.String() == want.Name.String() {
				return n
			}
		}
		a.Page.Press("Tab")
	}
	a.t.Fatalf("the Tab key does not reach the %s %q", role, want.Name)
	return axNode{}
}

// Press presses a button by its name, or the first whose name begins so.
func (a ax) Press(name string) {
	a.t.Helper()
	a.Go("button", name)
	a.Page.Press("Enter")
}

// Choose presses a button of a group of answers with the space bar.
func (a ax) Choose(name string) {
	a.t.Helper()
	a.Go("button", name)
	a.Page.Press(" ")
}

// Set moves a slider by so many of its fine steps, with the keys for large, middle and fine steps
// (game/ui/hands.go), and returns what its value is then read as.
func (a ax) Set(name string, steps int) string {
	a.t.Helper()
	a.Go("slider", name)
	keys := [...]string{"PageUp", "ArrowRight"}
	if steps < 0 {
		steps, keys = -steps, [...]string{"PageDown", "ArrowLeft"}
	}
	press := func(n int, key string, modifiers ...input.Modifier) {
		for range n {
			a.Page.Press(key, modifiers...)
		}
	}
	press(steps/25, keys[0])
	press(steps%25/5, keys[1])
	press(steps%25%5, keys[1], input.ModifierShift)
	return a.Value(name)
}

// Value is what the value of a slider is read as: its aria-valuetext, which the protocol leaves out of
// the tree (Chromium 156 gives the bare number under that name, for every kind of slider), so that it
// is asked of the node's element.
func (a ax) Value(name string) string {
	a.t.Helper()
	n, ok := a.Find("slider", name)
	if !ok {
		a.t.Fatalf("there is no slider %q; there are: %s", name, a.all())
	}
	var text string
	a.do("reading a value", chromedp.ActionFunc(func(ctx context.Context) error {
		element, err := dom.ResolveNode().WithBackendNodeID(cdp.BackendNodeID(n.Element)).Do(ctx)
		if err != nil {
			return err
		}
		got, _, err := runtime.CallFunctionOn(`function () { return this.getAttribute("aria-valuetext") || this.value }`).
			WithObjectID(element.ObjectID).WithReturnByValue(true).Do(ctx)
		if err != nil {
			return err
		}
		return json.Unmarshal([]byte(got.Value), &text)
	}))
	return text
}

// Pressed reports whether a button is pressed in.
func (a ax) Pressed(name string) bool {
	a.t.Helper()
	n, ok := a.Find("button", name)
	return ok && n.State("pressed") == "true"
}

// Status is what the page announces: the text of the node with the role status.
func (a ax) Status() string {
	a.t.Helper()
	return a.text("status")
}

// Heading is the page's main heading.
func (a ax) Heading() string {
	a.t.Helper()
	return a.text("heading")
}

// Reads is all the text of the page but its controls, in the order of reading.
func (a ax) Reads() string {
	a.t.Helper()
	return a.text("main")
}

// text is the static text below the first node with that role.
func (a ax) text(role string) string {
	a.t.Helper()
	byID := map[string]axNode{}
	root := ""
	for _, n := range a.nodes() {
		byID[n.ID] = n
		if root == "" && n.Role.String() == role {
			root = n.ID
		}
	}
	var parts []string
	var walk func(string)
	walk = func(id string) {
		n := byID[id]
		switch n.Role.String() {
		case "StaticText":
			parts = append(parts, n.Name.String())
			return
		case "button", "slider":
			return
		}
		for _, c := range n.Children {
			walk(c)
		}
	}
	walk(root)
	return strings.Join(parts, " ")
}

// Until waits until something holds of the tree.
func (a ax) Until(what string, holds func() bool) {
	a.t.Helper()
	for range 60 {
		if holds() {
			return
		}
	}
	a.t.Fatalf("this did not come true: %s; the page says %q and has: %s", what, a.Status(), a.all())
}
