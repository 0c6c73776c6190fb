package pdf

import (
	"fmt"
	"slices"
	"strings"
	"testing"

	"club/quadrille/session/paper"
	"club/quadrille/session/standings"
)

// played is a big night of which some was played.
func played() paper.Night {
	n := night(60, 14, 8)
	for i := range n.Rounds[0].Games {
		n.Rounds[0].Games[i].Played, n.Rounds[0].Games[i].Points = true, [2]int{11, i % 10}
	}
	n.Why = map[string]string{}
	for i, p := range n.People {
		n.Table = append(n.Table, standings.Row{Rank: i + 1, Name: p.Name, Games: 8, Wins: 8 - i/10, Losses: i / 10, Difference: 60 - i})
		if i+1 < len(n.People) {
			n.Why[p.Name] = "before " + n.People[i+1].Name + ": same wins, +12 points to +9"
		}
	}
	return n
}

// TestAnotherProgramReadsEverySheet: every text of every sheet stands on its pages, on both sizes of paper, and nothing
// needs more pages than it should.
func TestAnotherProgramReadsEverySheet(t *testing.T) {
	most := map[string]int{"rotation": 8, "personal": 10, "slips": 17, "checkin": 3, "standings": 3, "met": 10, "card": 1}
	n := played()
	for _, size := range []Size{A4, Letter} {
		for _, k := range paper.Kinds() {
			t.Run(fmt.Sprintf("%v/%s", size, k.Name), func(t *testing.T) {
				s := k.Of(n)
				pages := textOf(t, write(t, s, size))
				if len(pages) > most[k.Name] {
					t.Errorf("%d pages, more than %d", len(pages), most[k.Name])
				}
				have := map[string]int{}
				for _, word := range strings.Fields(strings.Join(pages, " ")) {
					have[strings.Trim(word, ",:")]++
				}
				need := map[string]int{}
				for _, text := range s.Texts() {
					for _, word := range strings.Fields(text) {
						need[strings.Trim(word, ",:")]++
					}
				}
				if k.Name == "slips" {
					for _, b := range s.Blocks {
						delete(need, b.Mark)
					}
				}
				for word, times := range need {
					if have[word] < times && !strings.HasPrefix(word, "___") {
						t.Errorf("%q stands %d times on the pages, %d times on the sheet", word, have[word], times)
					}
				}
			})
		}
	}
}

// TestBlocksStayWhole: no block that fits a page is parted, nothing stands below the foot or beside the page, and pages
// are filled in order, for sheets of any size.
func TestBlocksStayWhole(t *testing.T) {
	for _, people := range []int{4, 8, 16, 31, 60, 64} {
		n := night(people, people/4, 9)
		for _, k := range paper.Kinds() {
			for _, size := range []Size{A4, Letter} {
				p := newPress(k.Of(n), size, made)
				p.choose()
				pages := p.pages()
				for i, page := range pages {
					if len(page) == 0 {
						t.Errorf("%s of %d on %v: page %d is empty", k.Name, people, size, i+1)
					}
					for _, l := range page {
						if l.y < margin-0.01 || l.y+l.tall > p.bottom()+0.1 && !l.air || l.x < margin-0.01 || l.x+p.wide > size.wide-margin+0.01 {
							t.Errorf("%s of %d on %v: a line at %.1f, %.1f of %.1f leaves the page", k.Name, people, size, l.x, l.y, l.tall)
						}
					}
				}
				if heads := countHeads(pages); !slices.Contains([]string{"checkin", "standings", "met"}, k.Name) && heads != len(p.sheet.Blocks) {
					t.Errorf("%s of %d on %v: %d blocks, but %d headings: some were parted", k.Name, people, size, len(p.sheet.Blocks), heads)
				}
			}
		}
	}
}

func countHeads(pages [][]placed) (heads int) {
	for _, page := range pages {
		for _, l := range page {
			if l.head {
				heads++
			}
		}
	}
	return heads
}
