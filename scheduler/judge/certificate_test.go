package judge

import (
	"reflect"
	"strings"
	"testing"
	"unicode/utf8"

	"club/quadrille/scheduler/night"
	"club/quadrille/scheduler/night/nighttest"
)

// TestEveryLineOfACertificateIsAMeasure: each value of a certificate has one file that says how it is judged, the
// lists are in one order, and the words fit a column.
func TestEveryLineOfACertificateIsAMeasure(t *testing.T) {
	var c Certificate
	v := reflect.ValueOf(&c).Elem()
	var lines []any
	for i := range v.NumField() {
		if p, ok := v.Field(i).Addr().Interface().(*Value); ok {
			lines = append(lines, p)
		}
	}
	if len(lines) != len(Kinds()) {
		t.Fatalf("%d lines, %d measures", len(lines), len(Kinds()))
	}
	names := map[string]bool{}
	for i, k := range Kinds() {
		if k.At(&c) != lines[i] {
			t.Errorf("%s is not line %d of the certificate", k.Name, i+1)
		}
		if k.Name == "" || names[k.Name] || utf8.RuneCountInString(k.Name) > 17 || utf8.RuneCountInString(k.Says) > 38 || k.Says == "" {
			t.Errorf("the words of %q: %q", k.Name, k.Says)
		}
		names[k.Name] = true
	}
}

// TestANewMeasureIsReadEverywhere: a measure that is added as the others are stands in the certificate of a night.
func TestANewMeasureIsReadEverywhere(t *testing.T) {
	before := registered
	defer func() { registered = before }()
	registered = append([]Kind(nil), before...)
	add(Kind{
		Name: "first on a court", Says: "games of the first person", At: func(c *Certificate) *Value { return &c.CourtSpread },
		Judge: func(c *Case) Value { return Value{Value: c.Counted.Games[0], Open: true} },
	})
	p := nighttest.Club(4, 1, 1)
	rounds := []night.Round{{Games: []night.Game{{A: night.Team{0, 1}, B: night.Team{2, 3}}}}}
	c := Rotation(night.New(&p), rounds).certificate(inOrder())
	if c.CourtSpread != (Value{Value: 1, Open: true}) || c.Perfect() {
		t.Errorf("%+v", c)
	}
}

// TestLevelsAreJudgedWhereTheyAreKnown and not told of where they are not.
func TestLevelsAreJudgedWhereTheyAreKnown(t *testing.T) {
	rounds := []night.Round{{Games: []night.Game{{A: night.Team{0, 1}, B: night.Team{2, 3}}}}}
	count := func(p night.Problem) (levels int, c Certificate) {
		c = Rotation(night.New(&p), rounds).Certificate()
		for _, m := range c.Measures() {
			if strings.Contains("sure winners, team gap, levels on a court", m.Name) {
				levels++
			}
		}
		return levels, c
	}
	if levels, _ := count(nighttest.Club(4, 1, 1)); levels != 0 {
		t.Errorf("%d measures of levels that nobody has", levels)
	}
	levels, c := count(nighttest.Leveled(4, 1, 1))
	if levels != 3 || c.TeamGap.Open || c.TeamGap.Value != 26 || c.CourtLevels != (Value{Value: 20, Bound: 20}) {
		t.Errorf("%d measures of levels, %+v", levels, c)
	}
	p := nighttest.Leveled(5, 1, 1)
	p.People[4].Level = 0
	rounds[0].Out = []night.Player{4}
	if _, c := count(p); !c.TeamGap.Open || c.TeamGap.Gap() != 0 {
		t.Errorf("a bound where somebody states no level: %+v", c.TeamGap)
	}
}
