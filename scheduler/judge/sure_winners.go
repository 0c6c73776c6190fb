package judge

// Games whose likelier winner has a chance above the limit.
var _ = add(Kind{
	Name: "sure winners", Says: "games with a winner above 75 %", Levels: true,
	At: func(c *Certificate) *Value { return &c.SureWinners },
	Judge: func(c *Case) Value {
		return bounded(c.Levels.Onesided, c.past.Onesided, c.Scope.SureWinners)
	},
})
