package judge

// Most rounds that somebody sits out running.
var _ = add(Kind{
	Name: "longest bench", Says: "most rounds out running", Rests: true, Traded: true,
	At: func(c *Certificate) *Value { return &c.LongestBench },
	Judge: func(c *Case) Value {
		return Value{Value: c.Counted.Longest, Bound: c.Scope.LongestBound()}
	},
})
