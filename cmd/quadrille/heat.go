package main

import (
	"io"
	"strings"

	"github.com/spf13/cobra"

	"club/quadrille/session/care"
)

// newHeat builds the command that says how hot it feels and what to do about it.
func newHeat() *cobra.Command {
	air := care.Air{}
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
	cmd.Flags().Var(asked[float64]{&air.Fahrenheit, care.TemperatureTakes, parseTemperature, "temperature"}, "temp", "`temperature` in the shade, in °C or °F: 33C or 91F")
	completes(cmd, "temp", cobra.NoFileCompletions)
	addShare(cmd, &air.Humidity, "humidity", 0, 100, "relative humidity in `percent`")
	cmd.Flags().BoolVar(&asJSON, "json", false, "print the figures as JSON")
	cmd.RunE = func(cmd *cobra.Command, _ []string) error {
		for _, name := range []string{"temp", "humidity"} {
			if !cmd.Flags().Changed(name) {
				return usagef("heat needs --%s, as in: quadrille heat --temp 33C --humidity 60", name)
			}
		}
		if asJSON {
			return printJSON(cmd.OutOrStdout(), feltOf(air))
		}
		return printHeat(cmd.OutOrStdout(), air)
	}
	return cmd
}

// felt is the heat as `heat --json` prints it. Its form is fixed.
type felt struct {
	F         float64 `json:"heat_index_f"`
	C         float64 `json:"heat_index_c"`
	Band      string  `json:"band"`
	BandInSun string  `json:"band_in_sun"`
}

func feltOf(a care.Air) felt {
	f := a.Index()
	return felt{f, care.Celsius(f), care.BandOf(f).String(), care.BandOf(f + care.Sun).String()}
}

// parseTemperature is care.ParseTemperature for a flag, which says itself what it takes.
func parseTemperature(text string) (float64, error) {
	v, err := care.ParseTemperature(text)
	if err != nil {
		return 0, errOutside
	}
	return v, nil
}

// printHeat writes the heat index with what to do, for people.
func printHeat(w io.Writer, air care.Air) error {
	out := strings.Join(air.Feels(), "\n") + "\n\n"
	for _, line := range air.ToDo() {
		out += wrap("- "+line, 2) + "\n"
	}
	_, err := io.WriteString(w, out+"\n"+wrap(care.Emergency, 0)+"\n"+wrap(care.Defer, 0)+"\n")
	return err
}
