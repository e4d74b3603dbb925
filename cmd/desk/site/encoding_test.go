package site

import "testing"

func TestAccepts(t *testing.T) {
	tests := []struct {
		header, coding string
		want           bool
	}{
		{"", "br", false},
		{"br", "br", true},
		{"gzip, deflate, br, zstd", "br", true},
		{"gzip, deflate", "br", false},
		{"br;q=0", "br", false},
		{"br;q=0.0, gzip", "br", false},
		{"br; Q=0.1", "br", true},
		{"BR", "br", true},
		{"brotli", "br", false},
		{"*", "br", true},
		{"*;q=0", "br", false},
		{"br;q=0, *", "br", false},
		{"*;q=0, gzip", "gzip", true},
		{"br;q=nonsense", "br", true},
	}
	for _, tt := range tests {
		if got := accepts(tt.header, tt.coding); got != tt.want {
			t.Errorf("accepts(%q, %q) = %v, want %v", tt.header, tt.coding, got, tt.want)
		}
	}
}
