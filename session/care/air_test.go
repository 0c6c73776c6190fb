package care

import (
	"math"
	"testing"
)

func TestParseTemperature(t *testing.T) {
	for text, want := range map[string]float64{"33C": 91.4, " 33 °c ": 91.4, "91F": 91, "91,5 f": 91.5, "-40C": -40, "60C": 140} {
		if got, err := ParseTemperature(text); err != nil || math.Abs(got-want) > 1e-9 {
			t.Errorf("%q: %v, %v", text, got, err)
		}
	}
	for _, text := range []string{"", "33", "C", "33K", "33CF", "61C", "-41C", "NaNC", "InfF", "33C 60"} {
		if got, err := ParseTemperature(text); err == nil {
			t.Errorf("%q is taken for %v", text, got)
		}
	}
}

func TestParseHumidity(t *testing.T) {
	for text, want := range map[string]float64{"60": 60, " 60 % ": 60, "0": 0, "100%": 100, "55,5": 55.5} {
		if got, err := ParseHumidity(text); err != nil || got != want {
			t.Errorf("%q: %v, %v", text, got, err)
		}
	}
	for _, text := range []string{"", "%", "-1", "101", "NaN", "60 C", "60%%"} {
		if got, err := ParseHumidity(text); err == nil {
			t.Errorf("%q is taken for %v", text, got)
		}
	}
}

// Whatever can be read is possible, and nothing else.
func FuzzParseAir(f *testing.F) {
	f.Add("33C", "60")
	f.Fuzz(func(t *testing.T, temperature, humidity string) {
		v, err := ParseTemperature(temperature)
		r, err2 := ParseHumidity(humidity)
		if err != nil || err2 != nil {
			return
		}
		a := Air{v, r}
		if err := a.Possible(); err != nil {
			t.Fatalf("%q and %q are read as %+v: %v", temperature, humidity, a, err)
		}
		if len(a.Feels()) != 2 || len(a.ToDo()) < 2 {
			t.Fatalf("%+v says %q and %q", a, a.Feels(), a.ToDo())
		}
	})
}
