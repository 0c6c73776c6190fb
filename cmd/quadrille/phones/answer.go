package phones

import (
	"fmt"
	"slices"
	"strings"

	"club/quadrille/session/public"
)

// answer is what the page says to one person. Its texts are whole, so that the page only lays them out.
type answer struct {
	Key    string
	Name   string // empty for somebody who is not in the hall, or not any more
	Go     bool   // called and not yet there
	Head   string // where the person belongs
	With   string // the partner, empty in singles
	Versus string // the opponents
	Facts  []string
	Then   string // what comes after that
	Say    string // a call, as a screen reader says it when it is new
}

// answerTo finds a person in the view, by key. Names are unlike each other in a view, so that the name leads to
// the rest.
func answerTo(v *public.View, key string) answer {
	a := answer{Key: key}
	if v == nil || key == "" {
		return a
	}
	at := slices.IndexFunc(v.People, func(p public.Person) bool { return p.Key == key })
	if at < 0 {
		return a
	}
	p := v.People[at]
	a.Name = p.Name
	switch {
	case p.State == public.OnCourt:
		a.onCourt(v, p)
		a.Then = ahead(v, p.Name)
	case p.State == public.Resting:
		a.Head = "You rest"
		a.Facts = append(a.Facts, "Nobody calls you until you tell the desk that you are back.")
	default:
		a.waiting(v, p)
	}
	return a
}

// onCourt tells of the game that somebody plays or is called to.
func (a *answer) onCourt(v *public.View, p public.Person) {
	a.Head = "You are on court " + p.Court
	at := slices.IndexFunc(v.Courts, func(c public.Court) bool { return c.Name == p.Court })
	if at < 0 {
		return
	}
	c := v.Courts[at]
	a.teams(c.A, c.B, p.Name)
	switch {
	case c.State == public.Called && v.Hold != nil:
		a.Head = fmt.Sprintf("Court %s, when play goes on", p.Court)
	case c.State == public.Called:
		a.Go, a.Head = true, "Go to court "+p.Court
		a.Say = a.Head + a.inWords()
	default:
		a.Facts = append(a.Facts, progress(c)...)
	}
}

// progress is how a game stands.
func progress(c public.Court) (facts []string) {
	if len(c.Score) == 2 {
		facts = append(facts, fmt.Sprintf("It stands %d-%d.", c.Score[0], c.Score[1]))
	}
	if c.Minutes > 0 {
		facts = append(facts, "It goes on for "+inMinutes(c.Minutes)+".")
	}
	return facts
}

// waiting tells somebody on the bench what comes.
func (a *answer) waiting(v *public.View, p public.Person) {
	a.Head = "You wait"
	game, found := nextOf(v, p.Name)
	switch {
	case found:
		a.Head = "Next: " + where(game)
		a.teams(game.A, game.B, p.Name)
	case slices.Contains(v.Next.Out, p.Name):
		a.Head = "You sit out"
		if v.Next.Round > 0 {
			a.Head = fmt.Sprintf("You sit out round %d", v.Next.Round)
		}
	}
	if at := slices.IndexFunc(v.Bench, func(w public.Waiting) bool { return w.Name == p.Name }); at >= 0 {
		w := v.Bench[at]
		a.Facts = append(a.Facts, "You have waited "+inMinutes(w.Minutes)+".")
		if w.Until > 0 {
			a.Facts = append(a.Facts, "Most likely you play in about "+inMinutes(w.Until)+".")
		}
	}
}

// ahead is what comes for somebody after the game that goes on, empty where it is not known yet.
func ahead(v *public.View, name string) string {
	after := "Then"
	if v.Next.Round > 0 {
		after = fmt.Sprintf("Then, in round %d", v.Next.Round)
	}
	if game, found := nextOf(v, name); found {
		var b answer
		b.teams(game.A, game.B, name)
		return fmt.Sprintf("%s: %s%s", after, where(game), b.inWords())
	}
	if slices.Contains(v.Next.Out, name) {
		return after + ": you sit out."
	}
	return ""
}

func nextOf(v *public.View, name string) (public.Game, bool) {
	at := slices.IndexFunc(v.Next.Games, func(g public.Game) bool {
		return slices.Contains(g.A, name) || slices.Contains(g.B, name)
	})
	if at < 0 {
		return public.Game{}, false
	}
	return v.Next.Games[at], true
}

// where names the court of a game to come.
func where(g public.Game) string {
	if g.Court == "" {
		return "the next court that is free"
	}
	return "court " + g.Court
}

// teams takes in with whom and against whom somebody plays.
func (a *answer) teams(ours, theirs []string, name string) {
	if !slices.Contains(ours, name) {
		ours, theirs = theirs, ours
	}
	partners := slices.DeleteFunc(slices.Clone(ours), func(other string) bool { return other == name })
	a.With, a.Versus = together(partners), together(theirs)
}

// inWords goes behind a court: “, with Ada, against Ben and Cora”.
func (a *answer) inWords() string {
	var out strings.Builder
	if a.With != "" {
		out.WriteString(", with " + a.With)
	}
	if a.Versus != "" {
		out.WriteString(", against " + a.Versus)
	}
	return out.String()
}

// together is a team in words.
func together(names []string) string { return strings.Join(names, " and ") }

// inMinutes is a number of minutes in words.
func inMinutes(n int) string {
	switch n {
	case 0:
		return "less than a minute"
	case 1:
		return "1 minute"
	}
	return fmt.Sprintf("%d minutes", n)
}
