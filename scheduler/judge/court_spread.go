package judge

// Σ over people of most less fewest games on a court.
var _ = add(Kind{
	Name: "court spread", Says: "most less fewest on a court, summed",
	At: func(c *Certificate) *Value { return &c.CourtSpread },
	Judge: func(c *Case) Value {
		return Value{Value: c.Counted.CourtSpread(), Bound: c.Scope.CourtBound(c.Counted)}
	},
})
