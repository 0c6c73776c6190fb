package care

import (
	"errors"
	"fmt"
	"strconv"
	"strings"
)

// Air is what somebody measured: °F in the shade, and relative humidity in %.
type Air struct {
	Fahrenheit float64 `json:"fahrenheit"`
	Humidity   float64 `json:"humidity"`
}

// The temperatures that somebody may mean, in °C.
const (
	Coldest = -40
	Hottest = 60
)

// Possible refuses what nobody can have measured.
func (a Air) Possible() error {
	c := Celsius(a.Fahrenheit)
	if !(c >= Coldest && c <= Hottest) {
		return fmt.Errorf("a temperature lies between %d °C and %d °C", Coldest, Hottest)
	}
	if !(a.Humidity >= 0 && a.Humidity <= 100) {
		return errors.New("a humidity lies between 0 and 100 %")
	}
	return nil
}

// Index is the heat index in °F, see HeatIndex.
func (a Air) Index() float64 { return HeatIndex(a.Fahrenheit, a.Humidity) }

// TemperatureTakes says what ParseTemperature reads.
var TemperatureTakes = fmt.Sprintf("a temperature with its unit, such as 33C or 91F, from %dC to %dC", Coldest, Hottest)

// ParseTemperature reads a temperature with its unit, as °F. The error says what it takes.
func ParseTemperature(text string) (float64, error) {
	text = strings.ToUpper(strings.Join(strings.Fields(strings.ReplaceAll(text, "°", "")), ""))
	number := strings.TrimRight(text, "CF")
	v, err := strconv.ParseFloat(strings.Replace(number, ",", ".", 1), 64)
	switch unit := strings.TrimPrefix(text, number); {
	case err == nil && unit == "C":
		v = Fahrenheit(v)
	case err == nil && unit == "F":
	default:
		return 0, errors.New("type " + TemperatureTakes)
	}
	if (Air{v, 0}).Possible() != nil {
		return 0, errors.New("type " + TemperatureTakes)
	}
	return v, nil
}

// ParseHumidity reads a relative humidity in %, with the sign or without. The error says what it takes.
func ParseHumidity(text string) (float64, error) {
	text = strings.TrimSpace(strings.TrimSuffix(strings.TrimSpace(text), "%"))
	v, err := strconv.ParseFloat(strings.Replace(text, ",", ".", 1), 64)
	if err != nil || !(v >= 0 && v <= 100) {
		return 0, errors.New("type a relative humidity in percent, such as 60, from 0 to 100")
	}
	return v, nil
}

// Feels says how hot the air feels in the shade and in full sun, a sentence each.
func (a Air) Feels() []string {
	index := a.Index()
	return []string{
		fmt.Sprintf("In the shade it feels like %s: %s.", BothScales(index), BandOf(index).Words()),
		fmt.Sprintf("In full sun it can feel like %s: %s.", BothScales(index+Sun), BandOf(index+Sun).Words()),
	}
}

// ToDo is what to do in this air, a sentence or two each, the most urgent first. Below it stand Emergency and Defer.
func (a Air) ToDo() []string {
	index := a.Index()
	shade, sun := Advise(BandOf(index)), Advise(BandOf(index+Sun))
	out := append(shade.Do, "Our rule of thumb, no authority's, in the shade: "+shade.Pace+".")
	if sun.Pace != shade.Pace {
		out = append(out, "In full sun: "+sun.Pace+".")
	}
	return out
}

// BothScales is a temperature in °F in both scales, with a decimal, so that it does not seem to lie in another band than
// it does.
func BothScales(f float64) string { return fmt.Sprintf("%.1f °C (%.1f °F)", Celsius(f), f) }

// Words name a band as a class, or say that there is none.
func (b Band) Words() string {
	if b == NoBand {
		return "below all classes of caution"
	}
	return "class " + strconv.Quote(b.String())
}
