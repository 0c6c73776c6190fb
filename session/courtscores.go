package session

import (
	"crypto/hmac"
	"crypto/sha256"
	"encoding/base32"
	"encoding/hex"
	"fmt"
	"time"

	"club/quadrille/scoring"
)

// Passing says which scores from the courts count without the organiser.
type Passing string

// The ways in which scores from the courts pass. The zero value is AskFirst.
const (
	AskFirst Passing = ""      // none: the organiser takes or refuses each
	BothSent Passing = "both"  // those that both teams of a game sent alike
	AllPass  Passing = "alone" // all
)

// Passings lists the ways.
func Passings() []Passing { return []Passing{AskFirst, BothSent, AllPass} }

// String says a way in words.
func (p Passing) String() string {
	switch p {
	case BothSent:
		return "pass where both teams send the same"
	case AllPass:
		return "pass by themselves"
	}
	return "wait for the desk"
}

// CourtScores says that the courts of a night may send scores, and how they pass.
type CourtScores struct {
	On     bool    `json:"on,omitempty"`
	Pass   Passing `json:"pass,omitempty"`
	Secret string  `json:"secret"` // 128 bits in hexadecimal, of which each court has its code
}

// words says the choice.
func (c CourtScores) words() string {
	if !c.On {
		return "no scores from the courts"
	}
	return "scores from the courts " + c.Pass.String()
}

// secretBytes is how long a secret is, and a code.
const secretBytes = 16

// validate refuses what is no such choice.
func (c CourtScores) validate() error {
	if raw, err := hex.DecodeString(c.Secret); err != nil || len(raw) != secretBytes {
		return fmt.Errorf("the secret of the courts' codes must be %d bytes in hexadecimal", secretBytes)
	}
	switch c.Pass {
	case AskFirst, BothSent, AllPass:
		return nil
	}
	return fmt.Errorf("scores cannot pass as %q: use both, alone or nothing", string(c.Pass))
}

// CourtCode is what opens the page of a court tonight, "" while courts send no scores. Whoever does not know the
// night's secret learns nothing from the codes of other courts (HMAC-SHA-256, RFC 2104, of which 128 bits are
// enough by RFC 2104, 5).
func (n *Night) CourtCode(court CourtID) string {
	if n.CourtScores == nil || !n.CourtScores.On {
		return ""
	}
	mac := hmac.New(sha256.New, []byte(n.CourtScores.Secret))
	mac.Write([]byte(n.UID + "\x00" + string(court)))
	return base32.StdEncoding.WithPadding(base32.NoPadding).EncodeToString(mac.Sum(nil)[:secretBytes])
}

// courtOf is the court of a code, "" where it is that of none. It takes as long for any code of that length.
func (n *Night) courtOf(code string) CourtID {
	var found CourtID
	for _, c := range n.Courts {
		if want := n.CourtCode(c.ID); want != "" && hmac.Equal([]byte(want), []byte(code)) {
			found = c.ID
		}
	}
	return found
}

// Proposal is a score that somebody at a court sent, and that neither counts nor was refused yet.
type Proposal struct {
	Game  GameID        `json:"game"`
	By    scoring.Team  `json:"by"` // whose score it is, as the sender said
	Final scoring.Final `json:"final"`
	Sent  time.Time     `json:"sent"`
}

// ProposalsOf are the open proposals for a game, the oldest first, at most one of each team.
func (n *Night) ProposalsOf(id GameID) []Proposal {
	var out []Proposal
	for _, p := range n.Proposals {
		if p.Game == id {
			out = append(out, p)
		}
	}
	return out
}

// withdraw drops the open proposals for a game: all, or those for which drop is true.
func (n *Night) withdraw(id GameID, drop func(Proposal) bool) {
	var left []Proposal
	for _, p := range n.Proposals {
		if p.Game != id || drop != nil && !drop(p) {
			left = append(left, p)
		}
	}
	n.Proposals = left
}

// CourtScoresChosen lets the courts send scores, or ends that.
type CourtScoresChosen struct {
	Choice CourtScores `json:"choice"`
}

func (e CourtScoresChosen) apply(f *fold, _ time.Time) error {
	n, err := f.night()
	if err != nil {
		return err
	}
	if err := e.Choice.validate(); err != nil {
		return err
	}
	n.CourtScores = &e.Choice
	if !e.Choice.On {
		n.Proposals = nil
	}
	return nil
}

// ScoreProposed is a score that came from a court. It changes nothing of its game, and nothing at all where that does
// not go on, so that what others send stands in the way of no undo.
type ScoreProposed struct {
	Game  GameID        `json:"game"`
	By    scoring.Team  `json:"by"`
	Final scoring.Final `json:"final"`
}

func (e ScoreProposed) apply(f *fold, at time.Time) error {
	n, err := f.night()
	if err != nil {
		return err
	}
	g := n.Game(e.Game)
	if g == nil || !g.Running() || n.CourtScores == nil || !n.CourtScores.On {
		return nil
	}
	g.Proposed++
	n.withdraw(e.Game, func(p Proposal) bool { return p.By == e.By })
	n.Proposals = append(n.Proposals, Proposal{e.Game, e.By, e.Final, at})
	return nil
}

// ProposalTaken says that a game's score is one that was proposed; GameFinished stands before it.
type ProposalTaken struct {
	Game GameID       `json:"game"`
	By   scoring.Team `json:"by"`
}

func (e ProposalTaken) apply(f *fold, _ time.Time) error {
	n, err := f.night()
	if err != nil {
		return err
	}
	n.withdraw(e.Game, nil)
	return nil
}

// ProposalsRefused drops what was proposed for a game.
type ProposalsRefused struct {
	Game GameID `json:"game"`
}

func (e ProposalsRefused) apply(f *fold, _ time.Time) error {
	n, err := f.night()
	if err != nil {
		return err
	}
	n.withdraw(e.Game, nil)
	return nil
}
