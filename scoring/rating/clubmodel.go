package rating

import "math"

// Club is the model of the desk. Points count for half of a result, and its numbers were chosen by simulated
// clubs of 32 people, in which games to 11 are played rally by rally between pairs drawn by lot. Three spreads of
// skill were looked at: in an even club the better of two pairs wins 69 % of games, in the usual one 78 %,
// in a mixed one, from beginners to strong players, 83 %.
//
// Whole and Blur mend what makes the plain model claim more than it knows: variances that shrink more slowly
// than the errors, and chances that are too flat while ratings are unsure. A share with the half margin scatters
// around its mean with a third to a half of the variance of a win or loss, hence Evidence above 1. Sigma,
// Evidence and Steep are the values with which ranges hold and chances happen in all three clubs, whether
// nobody states a level or everybody one that is off by half a level. In percent, over 40 clubs of each kind
// and from 5 to 400 games a person (QUADRILLE_LONG=1 go test ./scoring/rating -run Calibration -v):
//
//	                        even         usual        mixed
//	95 % ranges hold        96 to 99     97 to 99     94 to 97
//	  with stated levels    94 to 97     93 to 98     95 to 98
//	  of the plain model    89 to 100    77 to 100    66 to 99
//	said 85, happens        82           86           89
//	  of the plain model    78           80           83
//
// Games to 15, to 21 and by rally scoring, for which nothing was chosen, come to 92 to 100.
//
// Skills that change are not in it: [Model.Growth] is for those.
func Club() Model {
	return Model{
		Mu: 25, Sigma: 6, Beta: 25.0 / 6, HalfMargin: true,
		Evidence: 1.65, Whole: true, Blur: math.Pi / 8, Steep: 1.25,
	}
}
