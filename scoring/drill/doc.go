// Package drill teaches the call and the order of serve, and holds the card of rules for newcomers.
//
// A [Lesson] asks one question after another: the last rally is told, and the learner says the next call, who
// serves and from which box. [Lesson.Answer] checks, explains in one sentence why, and makes the
// questions harder as the answers get better. A lesson is a value, and the same seed asks the same
// questions. The answers come from the engine in package scoring, so they are those of the desk.
//
// [Card] is what a newcomer has to know, beside a court to scale, on one screen of 80 by 24.
package drill
