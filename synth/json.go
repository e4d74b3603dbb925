//go:build !wasip1

package synth

import (
	"bytes"
	"encoding/json"
	"errors"
	"fmt"
	"io"
	"slices"
	"strconv"
	"strings"
)

// UnmarshalJSON reads a description. What it leaves out keeps its default; an
// unknown field, a value of the wrong kind or out of its range is refused with
// the name of the field, and s is left as it was.
func (s *Sound) UnmarshalJSON(data []byte) error {
	var tree any
	dec := json.NewDecoder(bytes.NewReader(data))
	dec.UseNumber()
	if err := dec.Decode(&tree); err != nil {
		return fmt.Errorf("the sound is not JSON: %w", err)
	}
	if _, err := dec.Token(); err != io.EOF {
		return errors.New("the sound is not JSON: something follows its closing brace")
	}
	top, ok := tree.(map[string]any)
	if !ok {
		return errors.New("the sound must be a JSON object")
	}
	version, ok := top["version"].(json.Number)
	if !ok {
		return fmt.Errorf("version is missing; write \"version\": %d", Version)
	}
	if version.String() != strconv.Itoa(Version) {
		return fmt.Errorf("version is %s; this program reads version %d", version, Version)
	}
	delete(top, "version")
	read := Default()
	if err := read.fill("", top); err != nil {
		return err
	}
	*s = read
	return nil
}

// Parse reads a description; see [Sound.UnmarshalJSON].
func Parse(data []byte) (Sound, error) {
	var s Sound
	err := s.UnmarshalJSON(data)
	return s, err
}

func (s *Sound) fill(prefix string, tree map[string]any) error {
	for _, key := range sortedKeys(tree) {
		path, value := prefix+key, tree[key]
		if sub, ok := value.(map[string]any); ok && isGroup(path) {
			if err := s.fill(path+".", sub); err != nil {
				return err
			}
			continue
		}
		f, ok := FieldByName(path)
		if !ok {
			if isGroup(path) {
				return fmt.Errorf("%s must be a JSON object", path)
			}
			return fmt.Errorf("unknown field %s", path)
		}
		v, err := f.Parse(value)
		if err != nil {
			return err
		}
		if err := f.Check(v); err != nil {
			return err
		}
		f.Set(s, v)
	}
	return nil
}

// Parse turns what stands in JSON, read as a string or a [json.Number], into a
// value of the field. It does not check the range: see [Field.Check].
func (f *Field) Parse(in any) (float64, error) {
	switch in := in.(type) {
	case string:
		if i := index(f.Choices, in); i >= 0 && f.Unit != Feet {
			return float64(i), nil
		}
	case json.Number:
		if f.Unit == Feet {
			if i := index(f.Choices, in.String()); i >= 0 {
				return float64(i), nil
			}
			break
		}
		if len(f.Choices) == 0 {
			v, err := in.Float64()
			if err != nil {
				return 0, fmt.Errorf("%s is %s, which is too large a number", f.Name, in)
			}
			return v, nil
		}
	}
	if len(f.Choices) > 0 {
		return 0, fmt.Errorf("%s must be one of %s", f.Name, strings.Join(f.Choices, ", "))
	}
	return 0, fmt.Errorf("%s must be a number", f.Name)
}

func isGroup(path string) bool {
	return slices.ContainsFunc(fields, func(f Field) bool { return strings.HasPrefix(f.Name, path+".") })
}

func sortedKeys(m map[string]any) []string {
	keys := make([]string, 0, len(m))
	for k := range m {
		keys = append(keys, k)
	}
	slices.Sort(keys)
	return keys
}
