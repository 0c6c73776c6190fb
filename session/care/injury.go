package care

// What to do when somebody is hurt. That whoever may have a head injury does not play on that day without a qualified
// person's assessment is what the American Academy of Neurology (2013) and others advise; the rest is usual first aid.
const (
	// Hurt stands where somebody is noted as hurt.
	Hurt = "Keep clear and get qualified help; in doubt call the local emergency number. Qualified people and local rules decide."
	// HeadInjury stands where a head injury is suspected.
	HeadInjury = "Suspected head injury: out for tonight. Never leave the person alone. Unconscious, confused, being sick, " +
		"a worse headache or anything unusual: call the local emergency number. Qualified people decide, not the program."
	// Clearance stands where somebody with a suspected head injury may be let back.
	Clearance = "Only a qualified person who has assessed the hurt one may decide this; local rules may forbid it today. " +
		"In doubt the person stays out."
)
