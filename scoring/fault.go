package scoring

import "fmt"

// Fault is what ended a rally, in the eight kinds that tell a player what to work on.
type Fault uint8

// The faults. None is a rally whose end nobody noted, or that was won outright by a good shot.
const (
	None         Fault = iota
	Out                // the ball lands outside the court (7.D)
	Net                // the ball goes into or under the net (7.B, 7.C)
	SecondBounce       // the ball bounces twice before it is hit (7.E)
	Kitchen            // a volley in the kitchen, or carried into it by momentum (9.B to 9.D)
	ServiceFault       // motion, wrong box, or ten seconds gone (4.A, 4.E, 4.M)
	FootFault          // the server's feet (4.A.4)
	HitByBall          // the ball hits a player or what is worn or carried (7.H)
	Other              // any other, such as touching the net or volleying before the two bounces
)

var faultNames = [...]string{
	"none", "out", "net", "second bounce", "kitchen", "service fault", "foot fault", "hit by ball", "other",
}

// Faults lists every fault that can be noted, in the order of their constants.
func Faults() []Fault {
	return []Fault{Out, Net, SecondBounce, Kitchen, ServiceFault, FootFault, HitByBall, Other}
}

// String is the fault in lower case words.
func (f Fault) String() string {
	if int(f) < len(faultNames) {
		return faultNames[f]
	}
	return fmt.Sprintf("fault %d", uint8(f))
}

// MarshalText writes [Fault.String].
func (f Fault) MarshalText() ([]byte, error) {
	if int(f) >= len(faultNames) {
		return nil, fmt.Errorf("there is no fault number %d", uint8(f))
	}
	return []byte(faultNames[f]), nil
}

// UnmarshalText reads a fault as [Fault.String] writes it.
func (f *Fault) UnmarshalText(text []byte) error {
	for i, name := range faultNames {
		if name == string(text) {
			*f = Fault(i)
			return nil
		}
	}
	return fmt.Errorf("no fault is called %q: use one of %v", text, Faults())
}
