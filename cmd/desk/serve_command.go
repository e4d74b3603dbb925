package main

import (
	"context"
	"errors"
	"fmt"
	"net"
	"net/http"
	"strconv"
	"syscall"
	"time"

	"partialcredit/cmd/desk/site"
)

var serveCommand = command{
	name:    "serve",
	summary: "build the app and serve it on this machine",
	help: `It builds the app from this folder, serves it until Ctrl+C, and builds it anew when its
source has changed. Only this machine can reach it unless -host says otherwise.`,
	examples: []example{
		{"desk serve", "serve on http://localhost:8080"},
		{"desk serve -port 0", "on any port that is free; the address is printed"},
		{"desk serve -host 0.0.0.0", "for a classroom: every machine of the network can reach it"},
	},
	run: runServe,
}

func runServe(d *desk, args []string) error {
	flags := newFlags("serve")
	port := flags.Int("port", 8080, "the TCP `port`; 0 takes any free one")
	host := flags.String("host", "localhost", "the `address` to listen on; only this machine can reach localhost")
	if err := parseFlags(flags, args); err != nil {
		return err
	}
	listener, err := listen(*host, *port)
	if err != nil {
		return err
	}
	defer listener.Close()

	root, err := site.FindRoot()
	if err != nil {
		return err
	}
	fmt.Fprintln(d.out, "Building the app; the first time takes a minute or so.")
	options := site.Options{Root: root, Brotli: site.FastBrotli, Developing: true}
	fresh := site.NewFresh(root, func(ctx context.Context) (*site.Site, error) {
		return site.Build(ctx, options)
	})
	if _, err := fresh.Site(context.Background(), true); err != nil {
		return err
	}
	actual := listener.Addr().(*net.TCPAddr).Port
	fmt.Fprintf(d.out, "Partial Credit is at http://%s (stop with Ctrl+C).\n", net.JoinHostPort(*host, strconv.Itoa(actual)))
	server := &http.Server{Handler: site.Handler(fresh.Site), ReadHeaderTimeout: 10 * time.Second}
	return server.Serve(listener)
}

// listen opens the port. When it is taken, the error says what to do about it.
func listen(host string, port int) (net.Listener, error) {
	if port < 0 || port > 65535 {
		return nil, &misuseError{fmt.Errorf("the port must lie between 0 and 65535, but %d was given", port)}
	}
	listener, err := net.Listen("tcp", net.JoinHostPort(host, strconv.Itoa(port)))
	switch {
	case err == nil:
		return listener, nil
	case errors.Is(err, syscall.EADDRINUSE):
		other := port + 1
		if other > 65535 {
			other = 8080
		}
		return nil, fmt.Errorf("port %d is already taken by another program. Choose another port: PORT=%d make run", port, other)
	case errors.Is(err, syscall.EACCES):
		return nil, fmt.Errorf("this user may not open port %d. Choose one above 1023: PORT=8080 make run", port)
	default:
		return nil, fmt.Errorf("port %d on %s cannot be opened: %w", port, host, err)
	}
}
