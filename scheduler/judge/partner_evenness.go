package judge

// Σ C(p,2) over pairs who partnered p times.
var _ = add(Kind{
	Name: "partner evenness", Says: "two games with the same partner",
	At: func(c *Certificate) *Value { return &c.PartnerEvenness },
	Judge: func(c *Case) Value {
		return Value{Value: c.Counted.Partners, Bound: c.Least.Partners}
	},
})
