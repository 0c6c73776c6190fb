package care

import (
	"encoding/json"
	"math"
	"os"
	"strings"
	"testing"

	"pgregory.net/rapid"
)

// published is the file of reference values; it names its sources itself: the Weather Prediction
// Center's equation page and the chart of the service's office in Tulsa.
type published struct {
	Chart []struct {
		T     float64 `json:"t_f"`
		RH    float64 `json:"rh"`
		Chart float64 `json:"chart_hi_f"`
		Plain float64 `json:"rothfusz_unadjusted_f"`
		Full  float64 `json:"full_nws_algorithm_f"`
	} `json:"chart_vectors"`
	Branches []struct {
		T  float64 `json:"t_f"`
		RH float64 `json:"rh"`
		HI float64 `json:"hi_f"`
	} `json:"branch_vectors_single_average"`
	Categories map[string]json.RawMessage `json:"categories"`
}

func read(t *testing.T) (p published) {
	t.Helper()
	text, err := os.ReadFile("testdata/heat_index.json")
	if err != nil {
		t.Fatal(err)
	}
	if err := json.Unmarshal(text, &p); err != nil {
		t.Fatal(err)
	}
	return p
}

func TestTheRegressionIsThePublishedChart(t *testing.T) {
	p := read(t)
	if len(p.Chart) != 135 {
		t.Fatalf("%d cells, the chart has 135", len(p.Chart))
	}
	for _, c := range p.Chart {
		got := Regression(c.T, c.RH)
		if math.Abs(got-c.Chart) > 0.51 {
			t.Errorf("%v °F, %v %%: %.3f, the chart says %v", c.T, c.RH, got, c.Chart)
		}
		full := HeatIndex(c.T, c.RH)
		// The chart's two cells below 80 °F were reckoned with the simple formula averaged a second time,
		// which the equation as printed does not do; the branch vectors have it averaged once.
		if math.Abs(got-c.Plain) > 1e-9 || full >= simpleBelow && math.Abs(full-c.Full) > 1e-9 {
			t.Errorf("%v °F, %v %%: %v and %v, not %v and %v", c.T, c.RH, got, full, c.Plain, c.Full)
		}
	}
}

func TestEachBranchOfTheRule(t *testing.T) {
	p := read(t)
	if len(p.Branches) < 20 {
		t.Fatalf("only %d vectors", len(p.Branches))
	}
	for _, c := range p.Branches {
		if got := HeatIndex(c.T, c.RH); math.Abs(got-c.HI) > 1e-9 {
			t.Errorf("%v °F, %v %%: %v, not %v", c.T, c.RH, got, c.HI)
		}
	}
}

func TestBandsBeginWhereTheServiceSays(t *testing.T) {
	var chart struct {
		Classes []struct {
			Name  string   `json:"name"`
			From  float64  `json:"from_f"`
			Below *float64 `json:"below_f"`
		} `json:"classes"`
	}
	if err := json.Unmarshal(read(t).Categories["nws_current_chart"], &chart); err != nil {
		t.Fatal(err)
	}
	if len(chart.Classes) != 4 {
		t.Fatalf("%d classes", len(chart.Classes))
	}
	for i, c := range chart.Classes {
		b := Caution + Band(i)
		if b.String() != strings.ToLower(c.Name) || BandOf(c.From) != b || BandOf(math.Nextafter(c.From, 0)) != b-1 || b.From() != c.From {
			t.Errorf("%v begins elsewhere than at %v", b, c.From)
		}
		if c.Below != nil && BandOf(*c.Below) != b+1 {
			t.Errorf("%v ends elsewhere than at %v", b, *c.Below)
		}
	}
	if BandOf(79.99) != NoBand || NoBand.String() != "none" {
		t.Error("below 80 °F is no band")
	}
}

func TestHotterOrMoreHumidIsNeverABetterBand(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		f, r := rapid.Float64Range(80, 112).Draw(t, "F"), rapid.Float64Range(40, 80).Draw(t, "%")
		if BandOf(HeatIndex(f+1, r)) < BandOf(HeatIndex(f, r)) {
			t.Fatalf("%v °F at %v %% is a milder band than a degree less", f+1, r)
		}
		if BandOf(HeatIndex(f, r+1)) < BandOf(HeatIndex(f, r)) {
			t.Fatalf("%v °F at %v %% is a milder band than drier air", f, r+1)
		}
	})
}

func TestCelsiusAndBack(t *testing.T) {
	for _, c := range []struct{ f, c float64 }{{32, 0}, {212, 100}, {-40, -40}, {104, 40}} {
		if Celsius(c.f) != c.c || Fahrenheit(c.c) != c.f {
			t.Errorf("%v °F is %v °C, and %v °C is %v °F", c.f, Celsius(c.f), c.c, Fahrenheit(c.c))
		}
	}
}

func TestAdviceGrowsWithTheBand(t *testing.T) {
	seen := map[string]Band{}
	for b := NoBand; b <= ExtremeDanger; b++ {
		a := Advise(b)
		if len(a.Do) == 0 || a.Pace == "" {
			t.Errorf("%v has no advice", b)
		}
		if twin, ok := seen[a.Pace]; ok {
			t.Errorf("%v and %v say the same", b, twin)
		}
		seen[a.Pace] = b
		if stops := strings.HasPrefix(a.Do[0], "Stop"); stops != (b >= Danger) {
			t.Errorf("%v: %q", b, a.Do[0])
		}
	}
}
