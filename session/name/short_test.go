package name

import "testing"

func TestInitial(t *testing.T) {
	for _, c := range []struct {
		full    string
		letters int
		want    string
	}{
		{"Agnes Vale", 1, "Agnes V."},
		{"Agnes Vale", 2, "Agnes Va."},
		{"Agnes Vale", 4, "Agnes Vale."},
		{"Agnes Vale", 5, "Agnes Vale"},
		{"Jan van der Berg", 1, "Jan B."},
		{"Åsa Öst", 1, "Åsa Ö."},
		{"Åsa 👩‍👧", 1, "Åsa 👩‍👧."},
		{"Cher", 3, "Cher"},
		{"Jan St.", 2, "Jan St."},
		{"Jan St.", 3, "Jan St."},
		{"Jan St.", 4, "Jan St."},
		{"O'Brien, Pat", 1, "Pat O."},
		{"van der Berg, Jan", 1, "Jan B."},
		{"Cher,", 1, "Cher,"},
	} {
		if got := Initial(c.full, c.letters); got != c.want {
			t.Errorf("%d letters of %q are %q, want %q", c.letters, c.full, got, c.want)
		}
	}
	if got := First("Jan van der Berg"); got != "Jan" {
		t.Errorf("the first name is %q", got)
	}
	if got := First("O'Brien, Pat"); got != "Pat" {
		t.Errorf("of a name with the surname first, the first name is %q", got)
	}
}
