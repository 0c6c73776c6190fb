package scoring

// Mistake is something that goes wrong before a serve and is noticed later.
type Mistake uint8

// The mistakes.
const (
	WrongServer   Mistake = iota // the wrong player served
	WrongBox                     // the serve came from the wrong box
	WrongReceiver                // the wrong player returned
	WrongScore                   // the call was wrong
)

// Noticed is when a mistake was noticed.
type Noticed uint8

// The moments of a rally.
const (
	BeforeServe  Noticed = iota
	BeforeReturn         // in the rally, before the return of serve
	InRally              // in the rally, after the return of serve
	AfterRally
)

// Ruling is what follows from a mistake.
type Ruling struct {
	Replay bool   // the rally is played again
	Fault  bool   // whoever stopped play loses the rally
	Why    string // one sentence
}

// Settle is the rule for a mistake that somebody pointed out, in a rally by stopping play; right says
// that there was indeed a mistake.
//
// Since the middle of 2023 a wrong server, box or receiver is no fault in itself (4.B.9). For a wrong
// call see 2026: 6.F.
func Settle(m Mistake, noticed Noticed, right bool) Ruling {
	switch {
	case noticed == BeforeServe:
		return Ruling{Why: "Nothing is served yet: put it right and call the score again."}
	case noticed == AfterRally:
		return Ruling{Why: "The rally is over, so its result stands: put it right before the next serve."}
	case !right:
		return Ruling{Fault: true, Why: "Nothing was wrong, so stopping the rally is a fault of whoever stopped it."}
	case m == WrongScore && noticed == InRally:
		return Ruling{Fault: true, Why: "A wrong call may stop play only before the return of serve, so stopping it later is a fault."}
	}
	return Ruling{Replay: true, Why: "It was pointed out in time: put it right and play the rally again."}
}
