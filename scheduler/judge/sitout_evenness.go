package judge

// Σ (sit-outs - share owed)² over people, in hundredths, beside the fairest sit-outs that there are.
var _ = add(Kind{
	Name: "sit-out evenness", Says: "squares off the share owed, x 100", Rests: true,
	At:    func(c *Certificate) *Value { return &c.SitoutEvenness },
	Judge: func(c *Case) Value { return c.evenness },
})
