package paper_test

import (
	"reflect"
	"strings"
	"testing"

	"club/quadrille/session"
	"club/quadrille/session/care"
	"club/quadrille/session/paper"
)

// TestCardForTheWall: what to do first stands on top, the text is as large as there is room for, and what nobody has
// written is a line to write on.
func TestCardForTheWall(t *testing.T) {
	got := paper.Card(paper.Night{Card: session.EmergencyCard{Address: "Mill Lane 4", Defibrillator: "by the door"}})
	blank := strings.Repeat("_", 40)
	want := paper.Sheet{Title: "In an emergency", Under: []string{care.CallFirst}, Large: true, Beside: 1, Blocks: []paper.Block{
		{Heading: "Address", Lines: []string{"Mill Lane 4"}},
		{Heading: "Access", Lines: []string{blank}},
		{Heading: "Defibrillator", Lines: []string{"by the door"}},
		{Heading: "First aid kit", Lines: []string{blank}},
		{Heading: "Contacts", Lines: []string{blank}},
	}}
	if !reflect.DeepEqual(got, want) {
		t.Errorf("%+v, want %+v", got, want)
	}
}
