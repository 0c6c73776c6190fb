package session

import (
	"time"

	"club/quadrille/scoring"
	"club/quadrille/scoring/rating"
)

// week is what ratings count time away in.
const week = 7 * 24 * time.Hour

// Ratings rates everybody by all games of all nights, in their order. They are worked out anew
// each time and never kept, so a corrected score corrects them too. Who states a level starts from
// it; walkovers and void games say nothing about skill.
func Ratings(club *Club, m rating.Model) (rating.Table[PersonID], error) {
	games, _ := ratedGames(club, m)
	return rating.Replay(m, startRatings(club, m), games)
}

// startRatings are what those start from who state a level.
func startRatings(club *Club, m rating.Model) map[PersonID]rating.Rating {
	start := map[PersonID]rating.Rating{}
	for _, p := range club.People {
		if p.Level > 0 {
			start[p.ID] = m.Level(p.Level)
		}
	}
	return start
}

// ratedGames lists the games that say something about skill, and of which night each is.
func ratedGames(club *Club, m rating.Model) (games []rating.Game[PersonID], of []*Night) {
	now := 0.0 // weeks; a laptop's clock that was put back counts for no time, not for time before
	for _, n := range club.Nights {
		for i := range n.Games {
			if g, ok := ratedGame(m, n, &n.Games[i]); ok {
				now = max(now, g.Week)
				g.Week = now
				games, of = append(games, g), append(of, n)
			}
		}
	}
	return games, of
}

// RatedNight is a person's rating after a night, and how many games of it counted for that.
type RatedNight struct {
	Night  *Night
	Rating rating.Rating
	Games  int
}

// RatingOver is the course of a person's rating over the nights in which the person played, oldest first.
func RatingOver(club *Club, m rating.Model, id PersonID) ([]RatedNight, error) {
	games, of := ratedGames(club, m)
	var out []RatedNight
	err := rating.Course(m, startRatings(club, m), games, id, func(game int, r rating.Rating) {
		if k := len(out); k == 0 || out[k-1].Night != of[game] {
			out = append(out, RatedNight{Night: of[game]})
		}
		last := &out[len(out)-1]
		last.Rating = r
		last.Games++
	})
	return out, err
}

// ratedGame is what a game says about its people, false when it says nothing.
func ratedGame(m rating.Model, n *Night, g *Game) (rating.Game[PersonID], bool) {
	if g.Final == nil {
		return rating.Game[PersonID]{}, false
	}
	switch g.Final.How() {
	case scoring.Void, scoring.Walkover:
		return rating.Game[PersonID]{}, false
	}
	win := 0.5
	if w, ok := g.Final.Winner(); ok {
		win = 1
		if w == scoring.B {
			win = 0
		}
	}
	s := g.Final.Score()
	return rating.Game[PersonID]{
		A: members(g.A), B: members(g.B),
		Share: m.Settled(win, s.A, s.B, g.Rules.To),
		Week:  float64(n.Opened.Unix()) / week.Seconds(),
	}, true
}

// members are the persons of a team.
func members(s Team) []PersonID {
	if s[1] == "" {
		return s[:1]
	}
	return s[:]
}
