package judge

// Pairs who are there together, may meet and never do.
var _ = add(Kind{
	Name: "strangers", Says: "pairs here together who never meet",
	At: func(c *Certificate) *Value { return &c.Strangers },
	Judge: func(c *Case) Value {
		return c.Scope.Strangers(c.Counted, c.Least.Meetings)
	},
})
