package scoring_test

import (
	"pgregory.net/rapid"

	"club/quadrille/scoring"
)

// drawRules draws any valid rules to 21.
func drawRules() *rapid.Generator[scoring.Rules] {
	return rapid.Custom(func(t *rapid.T) scoring.Rules {
		r := scoring.Rules{
			Scoring: rapid.SampledFrom([]scoring.Scoring{scoring.SideOut, scoring.RallyScoring}).Draw(t, "scoring"),
			Singles: rapid.Bool().Draw(t, "singles"),
			To:      rapid.IntRange(1, 21).Draw(t, "to"),
			WinBy:   rapid.IntRange(1, 2).Draw(t, "win by"),
			Minutes: rapid.SampledFrom([]int{0, 12}).Draw(t, "minutes"),
		}
		if rapid.Bool().Draw(t, "capped") {
			r.Cap = rapid.IntRange(r.To, r.To+6).Draw(t, "cap")
		}
		if r.Scoring == scoring.RallyScoring {
			r.WinOnServe = rapid.Bool().Draw(t, "win on serve")
		}
		if rapid.Bool().Draw(t, "handicap") {
			r.StartA = rapid.IntRange(0, r.To-1).Draw(t, "start a")
			r.StartB = rapid.IntRange(0, r.To-1).Draw(t, "start b")
		}
		return r
	})
}

func drawSide() *rapid.Generator[scoring.Team] {
	return rapid.SampledFrom([]scoring.Team{scoring.A, scoring.B})
}

// drawRallies draws rallies of which one team wins the more, so that games of every length come up.
func drawRallies() *rapid.Generator[[]scoring.Rally] {
	return rapid.Custom(func(t *rapid.T) []scoring.Rally {
		strength := rapid.IntRange(1, 9).Draw(t, "strength of a")
		return rapid.SliceOfN(rapid.Custom(func(t *rapid.T) scoring.Rally {
			won := scoring.B
			if rapid.IntRange(0, 9).Draw(t, "rally") < strength {
				won = scoring.A
			}
			return scoring.Rally{Won: won}
		}), 0, 120).Draw(t, "rallies")
	})
}
