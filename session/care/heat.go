package care

import "math"

// The switch from the simple formula to the regression, in °F, and the temperature up to which the
// index is the temperature itself.
const (
	simpleBelow = 80.0
	coldUpTo    = 40.0
)

// Sun is by how many °F full sun can raise the heat index, which is reckoned for shade and light
// wind (National Weather Service).
const Sun = 15.0

// HeatIndex is how hot it feels in the shade, in °F, at a temperature in °F and a relative humidity
// in %: the equation of the National Weather Service (Rothfusz, Technical Attachment SR 90-23, 1990)
// with the adjustments that its Weather Prediction Center publishes. The simple formula holds below
// 80 °F and is taken as printed, which is already a mean with the temperature. Down from 40 °F the
// index is the temperature.
func HeatIndex(temperature, humidity float64) float64 {
	t, r := temperature, humidity
	if t <= coldUpTo {
		return t
	}
	simple := 0.5 * (t + 61 + 1.2*(t-68) + 0.094*r)
	if simple < simpleBelow {
		return simple
	}
	return Regression(t, r) + adjustment(t, r)
}

// Regression is the heat index without adjustments, as the published chart has it, in °F; it holds
// from about 80 °F up.
func Regression(t, r float64) float64 {
	return -42.379 + 2.04901523*t + 10.14333127*r - 0.22475541*t*r - 0.00683783*t*t - 0.05481717*r*r +
		0.00122874*t*t*r + 0.00085282*t*r*r - 0.00000199*t*t*r*r
}

// adjustment is what very dry air takes from the regression and very humid air adds to it, in °F.
func adjustment(t, r float64) float64 {
	switch {
	case r < 13 && t >= 80 && t <= 112:
		return -(13 - r) / 4 * math.Sqrt((17-math.Abs(t-95))/17)
	case r > 85 && t >= 80 && t <= 87:
		return (r - 85) / 10 * (87 - t) / 5
	}
	return 0
}

// Celsius is a temperature in °F as °C.
func Celsius(f float64) float64 { return (f - 32) * 5 / 9 }

// Fahrenheit is a temperature in °C as °F.
func Fahrenheit(c float64) float64 { return c*9/5 + 32 }

// Band is a class of the heat index as the National Weather Service names it.
type Band int

// The bands, from mild to worst. Each begins where Band.From says.
const (
	NoBand         Band = iota // below all classes
	Caution                    // from 80 °F
	ExtremeCaution             // from 90 °F
	Danger                     // from 103 °F
	ExtremeDanger              // from 125 °F
)

// bands has the name of each band and the heat index in °F from which it holds: the newer of two sets
// that the service's offices publish, which is the more careful.
var bands = [...]struct {
	name string
	from float64
}{{"none", math.Inf(-1)}, {"caution", 80}, {"extreme caution", 90}, {"danger", 103}, {"extreme danger", 125}}

// BandOf is the band of a heat index in °F.
func BandOf(index float64) Band {
	b := NoBand
	for int(b)+1 < len(bands) && index >= bands[b+1].from {
		b++
	}
	return b
}

// String is the name of the band in small letters, "none" below all of them.
func (b Band) String() string { return bands[b].name }

// From is the heat index in °F at which the band begins; it is -Inf for NoBand.
func (b Band) From() float64 { return bands[b].from }
