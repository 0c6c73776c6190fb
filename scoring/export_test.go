package scoring

// Ends and Passes are the closed forms behind Final, without the words of a refusal, for the sweep over all rules.
func Ends(r Rules, a, b int) bool { return r.ends(a, b) }

// Passes is the other of the two.
func Passes(r Rules, a, b int) bool { return r.passes(a, b) }
