package sheet

import (
	"bytes"
	"encoding/json"
	"fmt"
	"io"
	"strings"
)

// strict reads JSON and refuses fields it does not know. What is wrong is said for people
// who write sheets: encoding/json speaks to programmers.
func strict(data []byte, v any) error {
	dec := json.NewDecoder(bytes.NewReader(data))
	dec.DisallowUnknownFields()
	err := dec.Decode(v)
	switch wrong := err.(type) {
	case nil:
		return nil
	case *json.SyntaxError:
		line := 1 + bytes.Count(data[:min(len(data), int(wrong.Offset))], []byte("\n"))
		return fmt.Errorf("line %d is no JSON: a comma, a colon, a quotation mark or a bracket is missing or wrong there", line)
	case *json.UnmarshalTypeError:
		return wrongKind(wrong)
	}
	if err == io.EOF || err == io.ErrUnexpectedEOF {
		return fmt.Errorf("it ends before its last bracket")
	}
	if name, ok := strings.CutPrefix(err.Error(), "json: unknown field "); ok {
		return fmt.Errorf("unknown field %s", name)
	}
	return err
}

// wrongKind says which value cannot be what it is.
func wrongKind(wrong *json.UnmarshalTypeError) error {
	field := wrong.Field
	if field == "" {
		return fmt.Errorf("it must be an object of JSON, in braces")
	}
	switch kind, _, _ := strings.Cut(wrong.Value, " "); kind {
	case "string":
		return fmt.Errorf("%s must not be a text", field)
	case "number":
		return fmt.Errorf("%s must not be a number, or not such a number", field)
	case "array":
		return fmt.Errorf("%s must not be a list", field)
	case "object":
		return fmt.Errorf("%s must not be an object", field)
	}
	return fmt.Errorf("%s must not be true or false", field)
}
