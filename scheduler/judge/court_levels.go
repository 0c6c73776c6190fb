package judge

// Σ over games of the difference between the best and the last of the four, in tenths.
var _ = add(Kind{
	Name: "levels on a court", Says: "best less last of four, in tenths", Levels: true,
	At: func(c *Certificate) *Value { return &c.CourtLevels },
	Judge: func(c *Case) Value {
		return bounded(c.Levels.Spread, c.past.Spread, c.Scope.CourtLevels)
	},
})
