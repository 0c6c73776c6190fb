package care

// Advice is what to do about a band of heat. Symptoms and help are the usual first aid; Pace is a rule
// of thumb of this program, since no authority has published one for a club's doubles night, and is
// shown as such.
type Advice struct {
	Do   []string // for everybody, most urgent first
	Pace string   // how to play on, or that play stops; ours
}

// Defer stands below every advice.
const Defer = "Local rules, the venue and qualified people decide; stop sooner when anybody feels unwell."

// Emergency is what heat stroke looks like and what to do, which goes before everything else. Defer stands beside it.
const Emergency = "Confused, collapsed, or hot skin and odd behaviour: call the emergency number at once, move the person into the shade and cool with water and ice."

// Advise says what to do in a band.
func Advise(b Band) Advice {
	shade := "Water within reach of each court and shade on the bench; nobody waits in the sun."
	watch := "Watch one another: older people, children, those who are new to the heat, unwell or on medication first."
	unwell := "Dizzy, sick, cramps or a headache: out at once, into the shade, cool and drink; not again tonight without a qualified opinion."
	switch b {
	case Caution:
		return Advice{[]string{shade, watch, unwell}, "a break of 5 minutes to drink after every second game"}
	case ExtremeCaution:
		return Advice{[]string{shade, watch, unwell}, "games to 7 or of 10 minutes, 5 minutes to drink after each, and nobody plays more than two running"}
	case Danger:
		return Advice{[]string{"Stop, or move indoors or to a cooler hour.", watch, unwell}, "no play, unless a qualified person on the spot decides otherwise"}
	case ExtremeDanger:
		return Advice{[]string{"Stop now and get everybody into a cool place.", watch, unwell}, "no play"}
	default:
		return Advice{[]string{"Play as usual, and drink when you are thirsty."}, "no extra breaks"}
	}
}
