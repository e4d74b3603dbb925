//go:build !js

package main_test

import (
	"context"
	"encoding/json"
	"fmt"
	"sync"

	"github.com/gobwas/ws"
	"github.com/gobwas/ws/wsutil"
)

// bidi speaks WebDriver BiDi (W3C, https://www.w3.org/TR/webdriver-bidi/) over a websocket: commands
// with an id, answers with the same, events without. The module proxy had no kept Go client of it on
// 2026-11-25; the few commands that a test needs are plain JSON.
type bidi struct {
	send func([]byte) error
	hear func(method string, params json.RawMessage) // events

	mu      sync.Mutex
	last    int
	waiting map[int]chan bidiAnswer
	broken  error
}

type bidiAnswer struct {
	ID      int
	Method  string // of an event
	Params  json.RawMessage
	Result  json.RawMessage
	Error   string // its name, where the command failed
	Message string
}

// dialBidi connects to a browser. Events are heard on another goroutine.
func dialBidi(ctx context.Context, address string, hear func(string, json.RawMessage)) (*bidi, func(), error) {
	conn, _, _, err := ws.Dial(ctx, address)
	if err != nil {
		return nil, nil, err
	}
	b := &bidi{hear: hear, waiting: map[int]chan bidiAnswer{}}
	b.send = func(text []byte) error { return wsutil.WriteClientText(conn, text) }
	go func() {
		for {
			text, err := wsutil.ReadServerText(conn)
			if err != nil {
				b.breakOff(err)
				return
			}
			b.take(text)
		}
	}()
	return b, func() { conn.Close() }, nil
}

func (b *bidi) take(text []byte) {
	var a bidiAnswer
	if err := json.Unmarshal(text, &a); err != nil {
		b.breakOff(fmt.Errorf("the browser sent %.100q: %w", text, err))
		return
	}
	if a.Method != "" {
		b.hear(a.Method, a.Params)
		return
	}
	b.mu.Lock()
	defer b.mu.Unlock()
	if c := b.waiting[a.ID]; c != nil {
		delete(b.waiting, a.ID)
		c <- a
	}
}

func (b *bidi) breakOff(err error) {
	b.mu.Lock()
	defer b.mu.Unlock()
	b.broken = err
	for id, c := range b.waiting {
		delete(b.waiting, id)
		c <- bidiAnswer{Error: "broken off", Message: err.Error()}
	}
}

// do runs a command and stores its result, which may be nil.
func (b *bidi) do(ctx context.Context, method string, params, result any) error {
	b.mu.Lock()
	b.last++
	id, c := b.last, make(chan bidiAnswer, 1)
	b.waiting[id] = c
	text, err := json.Marshal(map[string]any{"id": id, "method": method, "params": params})
	if err == nil {
		err = b.broken
	}
	if err == nil {
		err = b.send(text)
	}
	b.mu.Unlock()
	if err != nil {
		return fmt.Errorf("%s: %w", method, err)
	}
	select {
	case <-ctx.Done():
		return fmt.Errorf("%s: %w", method, ctx.Err())
	case a := <-c:
		if a.Error != "" {
			return fmt.Errorf("%s: %s: %s", method, a.Error, a.Message)
		}
		if result == nil {
			return nil
		}
		return json.Unmarshal(a.Result, result)
	}
}
