package rotation

import "fmt"

// Fault is what keeps a document from being a rotation: where it stands and what it is.
type Fault struct {
	Round int    // from 1, 0 when the fault is in no round
	Court string // "" when it is on no court
	Text  string
}

// Error names round and court before the fault itself.
func (f *Fault) Error() string {
	switch {
	case f.Round == 0:
		return f.Text
	case f.Court == "":
		return fmt.Sprintf("round %d: %s", f.Round, f.Text)
	}
	return fmt.Sprintf("round %d, court %s: %s", f.Round, f.Court, f.Text)
}

func faultf(round int, court, format string, args ...any) error {
	return &Fault{round, court, fmt.Sprintf(format, args...)}
}
