package judge

// Most less fewest sit-outs of those present throughout.
var _ = add(Kind{
	Name: "sit-out spread", Says: "most less fewest, if here all night", Rests: true,
	At:    func(c *Certificate) *Value { return &c.SitoutSpread },
	Judge: func(c *Case) Value { return c.spread },
})
