package main

import (
	"fmt"
	"io"
	"strconv"
	"strings"

	"github.com/spf13/cobra"

	"club/quadrille/session/care"
)

// newHeat builds the command that says how hot it feels and what to do about it.
func newHeat() *cobra.Command {
	air := weather{humidity: -1}
	var asJSON bool
	cmd := &cobra.Command{
		Use:   "heat --temp 33C --humidity 60",
		Short: "Say how hot it feels, and what to do",
		Long: `Reckons the heat index by the equation that the National Weather Service of the United States
publishes, with its adjustments and its bands, and says what to do in each. The index is for the shade
and light wind: full sun can add up to 15 °F (8 °C). Breaks in minutes are a rule of thumb of this
program. Local rules, the venue and qualified people decide.`,
		Example: `  quadrille heat --temp 33C --humidity 60
  quadrille heat --temp 91F --humidity 70 --json`,
		Args: nothing,
	}
	cmd.Flags().Var(asked[float64]{&air.fahrenheit, temperatureTakes, parseTemperature, "temperature"}, "temp", "`temperature` in the shade, in °C or °F: 33C or 91F")
	completes(cmd, "temp", cobra.NoFileCompletions)
	addShare(cmd, &air.humidity, "humidity", 0, 100, "relative humidity in `percent`")
	cmd.Flags().BoolVar(&asJSON, "json", false, "print the figures as JSON")
	cmd.RunE = func(cmd *cobra.Command, _ []string) error {
		for _, name := range []string{"temp", "humidity"} {
			if !cmd.Flags().Changed(name) {
				return usagef("heat needs --%s, as in: quadrille heat --temp 33C --humidity 60", name)
			}
		}
		if asJSON {
			return printJSON(cmd.OutOrStdout(), air.felt())
		}
		return printHeat(cmd.OutOrStdout(), air)
	}
	return cmd
}

// weather is what somebody measured: °F in the shade, and relative humidity in %.
type weather struct{ fahrenheit, humidity float64 }

// felt is the heat as `heat --json` prints it. Its form is fixed.
type felt struct {
	F         float64 `json:"heat_index_f"`
	C         float64 `json:"heat_index_c"`
	Band      string  `json:"band"`
	BandInSun string  `json:"band_in_sun"`
}

func (w weather) felt() felt {
	f := care.HeatIndex(w.fahrenheit, w.humidity)
	return felt{f, care.Celsius(f), care.BandOf(f).String(), care.BandOf(f + care.Sun).String()}
}

// The temperatures that somebody may mean, in °C.
const coldest, hottest = -40, 60

var temperatureTakes = fmt.Sprintf("a temperature with its unit, such as 33C or 91F, from %dC to %dC", coldest, hottest)

// parseTemperature reads a temperature with its unit, as °F.
func parseTemperature(text string) (float64, error) {
	text = strings.ToUpper(strings.Join(strings.Fields(strings.ReplaceAll(text, "°", "")), ""))
	number := strings.TrimRight(text, "CF")
	v, err := strconv.ParseFloat(strings.Replace(number, ",", ".", 1), 64)
	if err != nil {
		return 0, errOutside
	}
	switch strings.TrimPrefix(text, number) {
	case "C":
		v = care.Fahrenheit(v)
	case "F":
	default:
		return 0, errOutside
	}
	if !(care.Celsius(v) >= coldest && care.Celsius(v) <= hottest) {
		return 0, errOutside
	}
	return v, nil
}

// printHeat writes the heat index with what to do, for people.
func printHeat(w io.Writer, air weather) error {
	index := care.HeatIndex(air.fahrenheit, air.humidity)
	sun := index + care.Sun
	advice := care.Advise(care.BandOf(index))
	var out strings.Builder
	fmt.Fprintf(&out, "In the shade it feels like %s: %s.\n", bothScales(index), bandInWords(care.BandOf(index)))
	fmt.Fprintf(&out, "In full sun it can feel like %s: %s.\n\n", bothScales(sun), bandInWords(care.BandOf(sun)))
	for _, line := range advice.Do {
		out.WriteString(wrap("- "+line, 2) + "\n")
	}
	out.WriteString(wrap("- Our rule of thumb, no authority's, in the shade: "+advice.Pace+".", 2) + "\n")
	if inSun := care.Advise(care.BandOf(sun)); inSun.Pace != advice.Pace {
		out.WriteString(wrap("- In full sun: "+inSun.Pace+".", 2) + "\n")
	}
	out.WriteString("\n" + wrap(care.Emergency, 0) + "\n" + wrap(care.Defer, 0) + "\n")
	_, err := io.WriteString(w, out.String())
	return err
}

// bothScales is a temperature in °F in both scales, with a decimal, so that it does not seem to lie in
// another band than it does.
func bothScales(f float64) string { return fmt.Sprintf("%.1f °C (%.1f °F)", care.Celsius(f), f) }

// bandInWords names a band as a class, or says that there is none.
func bandInWords(b care.Band) string {
	if b == care.NoBand {
		return "below all classes of caution"
	}
	return "class " + strconv.Quote(b.String())
}
