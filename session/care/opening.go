package care

// BeforePlay is what to look after before a night is opened. No authority's text about it was found: it is plain
// caution, but for the eyewear, which eye doctors and children's doctors advise for racket sports.
const BeforePlay = "Usual caution: no play on a wet court; eyewear for racket sports; water at hand. " +
	"Local rules, your venue and qualified people decide."
