package browser

import "syscall/js"

// Copy puts text into the clipboard; said is called when it is there, or when the
// browser would not have it.
func (p *Page) Copy(text string, said func(ok bool)) {
	clipboard := p.global.Get("navigator").Get("clipboard")
	if !clipboard.Truthy() { // a page that is not secure has none
		said(false)
		return
	}
	var done, failed js.Func
	answer := func(ok bool) js.Func {
		return js.FuncOf(func(js.Value, []js.Value) any {
			done.Release()
			failed.Release()
			said(ok)
			p.wake()
			return nil
		})
	}
	done, failed = answer(true), answer(false)
	clipboard.Call("writeText", text).Call("then", done, failed)
}

// Download hands text to the browser as a file.
func (p *Page) Download(name, text string) {
	blob := p.global.Get("Blob").New([]any{text}, map[string]any{"type": "application/json"})
	address := p.global.Get("URL").Call("createObjectURL", blob)
	link := p.document.Call("createElement", "a")
	link.Set("href", address)
	link.Set("download", name)
	link.Call("click")
	var later js.Func
	later = js.FuncOf(func(js.Value, []js.Value) any {
		p.global.Get("URL").Call("revokeObjectURL", address)
		later.Release()
		return nil
	})
	p.global.Call("setTimeout", later, 60_000) // by when every browser has taken it
}

// OpenFile lets people choose a file and gives what is in it, nil where it cannot be
// read or is larger than most bytes.
func (p *Page) OpenFile(accept string, most int, opened func(data []byte)) {
	input := p.document.Call("createElement", "input")
	input.Set("type", "file")
	input.Set("accept", accept)
	var chosen js.Func
	chosen = js.FuncOf(func(js.Value, []js.Value) any {
		chosen.Release()
		file := input.Get("files").Index(0)
		if !file.Truthy() {
			return nil
		}
		if file.Get("size").Int() > most {
			opened(nil)
			p.wake()
			return nil
		}
		var read, failed js.Func
		answer := func(take func(args []js.Value) []byte) js.Func {
			return js.FuncOf(func(_ js.Value, args []js.Value) any {
				read.Release()
				failed.Release()
				opened(take(args))
				p.wake()
				return nil
			})
		}
		read = answer(func(args []js.Value) []byte {
			array := p.global.Get("Uint8Array").New(args[0])
			data := make([]byte, array.Length())
			js.CopyBytesToGo(data, array)
			return data
		})
		failed = answer(func([]js.Value) []byte { return nil })
		file.Call("arrayBuffer").Call("then", read, failed)
		return nil
	})
	input.Call("addEventListener", "change", chosen)
	input.Call("click")
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
