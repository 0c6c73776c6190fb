package judge

// Σ C(m,2) over pairs who met m times.
var _ = add(Kind{
	Name: "meeting evenness", Says: "two games with the same person",
	At: func(c *Certificate) *Value { return &c.MeetingEvenness },
	Judge: func(c *Case) Value {
		return Value{Value: c.Counted.Meetings, Bound: c.Least.Meetings}
	},
})
