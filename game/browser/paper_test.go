package browser

import "testing"

func TestStylesAreTakenApart(t *testing.T) {
	for _, c := range []struct{ document, page, styles string }{
		{"", "", ""},
		{"<p>a</p>", "<p>a</p>", ""},
		{"<head><style>p{color:red}</style></head><p>a</p>", "<head></head><p>a</p>", "p{color:red}\n"},
		{"<style>@page{margin:1cm}</style><svg><style>.a{fill:none}</style><path/></svg>", "<svg><path/></svg>", "@page{margin:1cm}\n.a{fill:none}\n"},
		{"<p>a</p><style>p{}", "<p>a</p>", "p{}\n"}, // as HTML has it: an element that is not closed goes to the end
	} {
		if page, styles := apart(c.document); page != c.page || styles != c.styles {
			t.Errorf("%q: %q and %q", c.document, page, styles)
		}
	}
}
