// Package scheduler says who plays with whom, where and when, on a club's doubles night, and proves
// how fair that is.
//
// Start with [Plan], which makes the rounds still to come of a [Problem]; [Certify] measures the
// whole night against what is provably possible, [Audit] names whatever is invalid in a rotation
// wherever it came from, and [Warnings] tells before a round is called which wishes cannot all be
// met. [Next] is the same judgement for the rolling flow, where a court that frees calls the next four;
// [NextLadder] moves winners up and losers down.
//
// It stands on rooms whose imports run one way: night has the words (Problem, Game, Round) and what follows
// from a problem; measure says what the search weighs, in which order of importance, and counts; bound proves what
// cannot be bettered, and judge sets the one beside the other; lineup says who plays in a round; search makes a plan of rounds, from the stored plans of
// design where one is near; rolling and ladder make the next game and the next round; dice is the chance.
//
// The order of importance is one list, [measure.Order]: what must hold (presence, couples, keep-aparts, walls), the
// fairest sit-outs, wishes for partners, few partner repeats, then even meetings, at a price sit-outs twice running and
// games with a sure winner, even opponents, team balance; courts are used evenly at last.
//
// Everything here is a pure function of its arguments: no clock, no files, no global randomness.
// The same problem, seed and budget give the same plan on every machine. Rounds are counted from
// 0 in values and from 1 in words.
package scheduler
