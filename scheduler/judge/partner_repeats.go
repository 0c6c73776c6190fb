package judge

// Σ max(0, p-1) over pairs who partnered p times.
var _ = add(Kind{
	Name: "partner repeats", Says: "partners for a second time",
	At: func(c *Certificate) *Value { return &c.PartnerRepeats },
	Judge: func(c *Case) Value {
		return Value{Value: c.Counted.Repeats, Bound: c.Least.Repeats}
	},
})
