package session

import (
	"bytes"
	"encoding/json"
	"fmt"
)

// mapStrings rewrites every text in a JSON value and leaves all else, and the order of all, as it
// is. Names of members are not texts.
func mapStrings(payload json.RawMessage, change func(string) string) (json.RawMessage, error) {
	if !json.Valid(payload) { // which also bounds how deep it nests
		return nil, fmt.Errorf("payload: it is no JSON value")
	}
	in := json.NewDecoder(bytes.NewReader(payload))
	in.UseNumber()
	var out bytes.Buffer
	if err := mapValue(in, &out, change); err != nil {
		return nil, fmt.Errorf("payload: %w", err)
	}
	return out.Bytes(), nil
}

// mapValue copies the next value.
func mapValue(in *json.Decoder, out *bytes.Buffer, change func(string) string) error {
	token, err := in.Token()
	if err != nil {
		return err
	}
	switch t := token.(type) {
	case json.Delim:
		return mapInside(in, out, t, change)
	case string:
		return writeJSON(out, change(t))
	}
	return writeJSON(out, token)
}

// mapInside copies the members of an object or an array up to its end.
func mapInside(in *json.Decoder, out *bytes.Buffer, open json.Delim, change func(string) string) error {
	out.WriteString(open.String())
	for first := true; in.More(); first = false {
		if !first {
			out.WriteByte(',')
		}
		if open == '{' {
			name, err := in.Token()
			if err != nil {
				return err
			}
			if err := writeJSON(out, name); err != nil {
				return err
			}
			out.WriteByte(':')
		}
		if err := mapValue(in, out, change); err != nil {
			return err
		}
	}
	end, err := in.Token()
	if err != nil {
		return err
	}
	out.WriteString(end.(json.Delim).String())
	return nil
}

func writeJSON(out *bytes.Buffer, v any) error {
	text, err := json.Marshal(v)
	out.Write(text)
	return err
}
