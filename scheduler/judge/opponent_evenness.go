package judge

// Σ C(o,2) over pairs who opposed o times.
var _ = add(Kind{
	Name: "opponent evenness", Says: "two games against the same person",
	At: func(c *Certificate) *Value { return &c.OpponentEvenness },
	Judge: func(c *Case) Value {
		return Value{Value: c.Counted.Opponents, Bound: c.Least.Opponents}
	},
})
