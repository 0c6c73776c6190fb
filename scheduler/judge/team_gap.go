package judge

// Σ over games of the difference of the teams' levels, in tenths.
var _ = add(Kind{
	Name: "team gap", Says: "levels of two teams apart, in tenths", Levels: true,
	At: func(c *Certificate) *Value { return &c.TeamGap },
	Judge: func(c *Case) Value {
		return bounded(c.Levels.TeamGap, c.past.TeamGap, c.Scope.TeamGap)
	},
})
