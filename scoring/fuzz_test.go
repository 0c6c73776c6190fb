package scoring_test

import (
	"encoding/json"
	"strings"
	"testing"

	"club/quadrille/scoring"
)

func FuzzParseRallies(f *testing.F) {
	for _, seed := range []string{"", "a b b b a", "AB\n\tab", "abx", "aéb", "\xff"} {
		f.Add(seed)
	}
	f.Fuzz(func(t *testing.T, text string) {
		rallies, err := scoring.ParseRallies(text)
		if err != nil {
			return
		}
		bare := strings.ToLower(strings.Join(strings.Fields(text), ""))
		if got := scoring.FormatRallies(rallies); got != bare {
			t.Errorf("%q is read as %q", text, got)
		}
	})
}

func FuzzParseFinal(f *testing.F) {
	for _, seed := range []string{"11-7", "11:9", "9-6 t", "10-5 r a", "w b", "void", "12–10", "999-997", "-1-5", "11-7 x"} {
		f.Add(seed)
	}
	r := scoring.Rules{To: 11, WinBy: 2}
	f.Fuzz(func(t *testing.T, text string) {
		final, err := r.ParseFinal(text)
		if err != nil {
			if !final.IsZero() {
				t.Errorf("%q is refused and makes %v", text, final)
			}
			return
		}
		if err := r.Check(final); err != nil {
			t.Errorf("%q is read as %v, which the rules refuse: %v", text, final, err)
		}
		data, err := json.Marshal(final)
		var back scoring.Final
		if err != nil || json.Unmarshal(data, &back) != nil || back != final {
			t.Errorf("%v is written %s, %v, and read as %v", final, data, err, back)
		}
	})
}

func FuzzFinalJSON(f *testing.F) {
	f.Add([]byte(`{"a":11,"b":7,"how":"played"}`))
	f.Add([]byte(`{"a":4,"b":4,"how":"retired","won":"b"}`))
	f.Add([]byte(`{"a":1e9,"b":null}`))
	f.Fuzz(func(t *testing.T, data []byte) {
		var final scoring.Final
		if json.Unmarshal(data, &final) != nil {
			return
		}
		out, err := json.Marshal(final)
		var back scoring.Final
		if err != nil || json.Unmarshal(out, &back) != nil || back != final {
			t.Errorf("%s is written %s, %v, and read as %v", data, out, err, back)
		}
	})
}

func FuzzSheetJSON(f *testing.F) {
	f.Add([]byte(`{"rules":{"scoring":"side-out","to":11,"win_by":2},"first":"b","entries":[{"kind":"rally","rally":{"won":"a"}},{"kind":"remove","at":1}]}`))
	f.Add([]byte(`{"rules":{"scoring":"rally","to":1,"win_by":1},"entries":[{"kind":"set right","setting":{"score":{"a":1,"b":0}}}]}`))
	f.Fuzz(func(t *testing.T, data []byte) {
		var sheet scoring.Sheet
		if json.Unmarshal(data, &sheet) != nil || len(sheet.Entries) > 500 {
			return
		}
		_, stateErr := sheet.State()
		if checkErr := sheet.Check(); (checkErr == nil) != (stateErr == nil) {
			t.Errorf("the check says %v, the fold %v", checkErr, stateErr)
		}
	})
}
