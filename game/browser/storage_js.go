package browser

import (
	"errors"
	"syscall/js"
)

// storagePrefix keeps this app's texts apart from others of the same site.
const storagePrefix = "partialcredit."

func (p *Page) storageGet(key string) (value string, ok bool, err error) {
	defer storageError(&err)
	v := p.storage().Call("getItem", storagePrefix+key)
	if v.IsNull() {
		return "", false, nil
	}
	return v.String(), true, nil
}

func (p *Page) storageSet(key, value string) (err error) {
	defer storageError(&err)
	p.storage().Call("setItem", storagePrefix+key, value)
	return nil
}

// storage asks by way of Reflect: a setting can make the property itself throw,
// which ends the program when Go reads it.
func (p *Page) storage() js.Value {
	s := p.global.Get("Reflect").Call("get", p.global, "localStorage")
	if !s.Truthy() {
		panic(errClosed)
	}
	return s
}

// storageError turns what the browser threw into an error.
func storageError(err *error) {
	switch thrown := recover().(type) {
	case nil:
	case js.Error:
		*err = errClosed
		if thrown.Value.Get("name").String() == "QuotaExceededError" {
			*err = errFull
		}
	case error:
		if !errors.Is(thrown, errClosed) {
			panic(thrown)
		}
		*err = thrown
	default:
		panic(thrown)
	}
}
