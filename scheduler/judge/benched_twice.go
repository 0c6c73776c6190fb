package judge

// Sit-outs right after a sit-out.
var _ = add(Kind{
	Name: "out twice running", Says: "sat out two rounds running", Rests: true, Traded: true,
	At: func(c *Certificate) *Value { return &c.BenchedTwice },
	Judge: func(c *Case) Value {
		return Value{Value: c.Counted.Twice, Bound: c.Scope.TwiceBound()}
	},
})
