// Package pace says how long a game lasts: in rallies by the rules alone, in minutes by what a night has
// taught.
//
// [Distribution] takes the chances that a team wins a rally it serves and gives the exact distribution of
// rallies and of final scores; [Remaining] does the same from the middle of a game. A [Clock] learns
// minutes a game from the games of the night, and answers what an organiser asks: how many rounds fit
// until closing ([Clock.Rounds]), when is my next game ([Clock.Wait]), and to how many points should we
// play so that everybody gets six games ([Clock.Suggest]).
//
// Rallies are taken as independent, with one chance for each serving team. That is a model; the
// literature on rally games uses it throughout, and a night of counted rallies can be held against it
// with [ServeChance].
//
// Everything is a pure function of its arguments. Minutes are float64 minutes, chances are between 0
// and 1.
package pace
