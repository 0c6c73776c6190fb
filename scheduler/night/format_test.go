package night

import (
	"testing"
)

// FuzzParseFormat: what parses has a name that parses to the same.
func FuzzParseFormat(f *testing.F) {
	for _, format := range Formats() {
		f.Add(format.String())
	}
	f.Add(" MIXED ")
	f.Add("foursomes")
	f.Fuzz(func(t *testing.T, name string) {
		format, err := ParseFormat(name)
		if err != nil {
			return
		}
		if again, err := ParseFormat(format.String()); err != nil || again != format {
			t.Errorf("%q parses to %v, which parses to %v, %v", name, format, again, err)
		}
	})
}

func TestFormatText(t *testing.T) {
	for _, format := range Formats() {
		text, err := format.MarshalText()
		if err != nil {
			t.Fatal(err)
		}
		var again Format
		if err := again.UnmarshalText(text); err != nil || again != format {
			t.Errorf("%s is read as %v, %v", text, again, err)
		}
	}
	if _, err := Format(9).MarshalText(); err == nil {
		t.Error("a format without a name is written")
	}
}
