package theme

// colour is one colour as each kind of terminal shows it.
type colour struct {
	full    string // of 16 million, as #rrggbb
	indexed string // of the 256 that xterm numbers
	basic   string // of the terminal's own sixteen; empty where an attribute does instead
}

// palette holds the colours of the roles, for a dark or for a light background. All are our own
// values. With 16 million and 256 colours every text has a contrast of 4.5 to 1 or more (WCAG 2.1,
// success criterion 1.4.3) on black or white and on the usual greys and creams, and what is quiet has
// less than ink everywhere; a test reckons both. With sixteen colours nothing is known of the values,
// since users turn them round: there quiet is the terminal's faint, whatever its colours are.
type palette struct {
	ink, quiet, rule, here, act, stop, teamA, teamB, done colour
	heat                                                  [3]colour
}

var dark = palette{
	ink:   colour{"#d7dae0", "253", ""},
	quiet: colour{"#8a919e", "246", ""},
	rule:  colour{"#4a505c", "239", ""},
	here:  colour{"#7fb7e6", "110", "12"},
	act:   colour{"#e8b85c", "179", "11"},
	stop:  colour{"#f2777a", "210", "9"},
	teamA: colour{"#6fb1ff", "75", "14"},
	teamB: colour{"#f0a35e", "215", "3"},
	done:  colour{"#7fc99a", "114", "10"},
	heat:  [3]colour{{"#2f5d7c", "24", ""}, {"#58a6cc", "74", ""}, {"#f0a35e", "215", ""}},
}

var light = palette{
	ink:   colour{"#24292f", "235", ""},
	quiet: colour{"#5f6672", "241", ""},
	rule:  colour{"#c3c8d0", "251", ""},
	here:  colour{"#1f5f99", "25", "4"},
	act:   colour{"#7a5200", "58", ""},
	stop:  colour{"#b3261e", "124", "1"},
	teamA: colour{"#0b57b0", "25", "4"},
	teamB: colour{"#9a4200", "94", "5"},
	done:  colour{"#1f6f3f", "22", "2"},
	heat:  [3]colour{{"#b9d4e6", "152", ""}, {"#6aa6cc", "74", ""}, {"#d9772b", "172", ""}},
}

// contrastDark and contrastLight have at least 7 to 1 for every text, for tired eyes and bright halls
// (WCAG 2.1, success criterion 1.4.6).
var contrastDark = palette{
	ink:   colour{"#ffffff", "231", ""},
	quiet: colour{"#c2c8d2", "251", ""},
	rule:  colour{"#8a919e", "245", ""},
	here:  colour{"#a6d4ff", "153", "12"},
	act:   colour{"#ffd75f", "221", "11"},
	stop:  colour{"#ffafaf", "217", "9"},
	teamA: colour{"#9fd0ff", "117", "14"},
	teamB: colour{"#ffbf87", "216", "11"},
	done:  colour{"#a5e6bd", "158", "10"},
	heat:  dark.heat,
}

var contrastLight = palette{
	ink:   colour{"#000000", "16", ""},
	quiet: colour{"#41474f", "238", ""},
	rule:  colour{"#6b7280", "242", ""},
	here:  colour{"#0b3d6e", "17", "4"},
	act:   colour{"#553800", "52", ""},
	stop:  colour{"#8b0000", "88", "1"},
	teamA: colour{"#063a78", "18", "4"},
	teamB: colour{"#6e2c00", "52", "5"},
	done:  colour{"#0f4a28", "22", "2"},
	heat:  light.heat,
}
