package browser

import (
	"strings"
	"syscall/js"

	"partialcredit/game"
)

// files is what web/files.js can do.
func (p *Page) files() js.Value { return p.global.Get("partialCredit").Get("files") }

// once is a function for the page to call one time, which wakes the app.
func (p *Page) once(f func(answer js.Value)) js.Func {
	var called js.Func
	called = js.FuncOf(func(_ js.Value, args []js.Value) any {
		called.Release()
		f(args[0])
		p.wake()
		return nil
	})
	return called
}

// Copy puts text into the clipboard; said is called when it is there, or when the
// browser would not have it.
func (p *Page) Copy(text string, said func(ok bool)) {
	p.files().Call("copy", text, p.once(func(ok js.Value) { said(ok.Bool()) }))
}

// CanShare reports whether the system has something to share with.
func (p *Page) CanShare() bool { return p.files().Call("canShare").Bool() }

// Share offers title, text, address and, where the system takes it, a file to what
// the system shares with. Where a person leaves it, failed is not called.
func (p *Page) Share(title, text, address, name, kind, file string, shared, failed func()) {
	what := map[string]any{}
	for key, value := range map[string]string{"title": title, "text": text, "url": address} {
		if value != "" {
			what[key] = value
		}
	}
	data := js.Null()
	if file != "" {
		data = p.bytes(file)
	}
	p.files().Call("share", what, name, kind, data, p.once(func(outcome js.Value) {
		switch outcome.String() {
		case "shared":
			shared()
		case "failed":
			failed()
		}
	}))
}

// Download hands data of a media type to the browser as a file.
func (p *Page) Download(name, kind, data string) { p.files().Call("save", name, kind, p.bytes(data)) }

// Print prints an HTML document; said is called when the browser has taken it, or
// has no way to.
func (p *Page) Print(document string, said func(ok bool)) {
	page, styles := apart(document)
	p.files().Call("print", page, styles, p.once(func(ok js.Value) { said(ok.Bool()) }))
}

// OpenFiles lets people choose a file, or many, and gives what is in them: no data
// for what cannot be read or does not fit into most bytes in all.
func (p *Page) OpenFiles(accept string, many bool, most int, opened func([]game.File)) {
	p.files().Call("open", accept, many, most, p.once(func(list js.Value) { opened(p.read(list)) }))
}

// OnArrival has one function called with files that were dropped on the page or
// pasted, read as by [Page.OpenFiles], and the other with text.
func (p *Page) OnArrival(most int, dropped func([]game.File), pasted func(string)) {
	taken := func(f func(js.Value)) js.Func {
		return js.FuncOf(func(_ js.Value, args []js.Value) any {
			f(args[0])
			p.wake()
			return nil
		})
	}
	p.files().Call("watch", most, taken(func(list js.Value) { dropped(p.read(list)) }),
		taken(func(text js.Value) { pasted(text.String()) }))
}

func (p *Page) read(list js.Value) []game.File {
	files := make([]game.File, list.Length())
	for i := range files {
		f := list.Index(i)
		files[i].Name = strings.Clone(f.Get("name").String())
		if data := f.Get("data"); data.Truthy() {
			files[i].Data = make([]byte, data.Length())
			js.CopyBytesToGo(files[i].Data, data)
		}
	}
	return files
}

func (p *Page) bytes(s string) js.Value {
	array := p.global.Get("Uint8Array").New(len(s))
	js.CopyBytesToJS(array, []byte(s))
	return array
}

// Fragment is that of the page's address, with its # sign.
func (p *Page) Fragment() string { return p.global.Get("location").Get("hash").String() }

// OnFragment has f called when another one was followed.
func (p *Page) OnFragment(f func(fragment string)) {
	p.listen(p.global, "hashchange", func(js.Value) {
		f(p.Fragment())
		p.wake()
	})
}

// SetFragment changes it, which counts as following no link.
func (p *Page) SetFragment(fragment string) {
	p.global.Get("history").Call("replaceState", nil, "", fragment)
}

// Address is that of the page, without a fragment.
func (p *Page) Address() string {
	l := p.global.Get("location")
	return l.Get("origin").String() + l.Get("pathname").String()
}
