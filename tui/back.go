package tui

import (
	"club/quadrille/session"
	"club/quadrille/tui/ui"
)

// origin is where one was: a screen, and on the page of a person also whose.
type origin struct {
	screen ui.ScreenID
	person session.PersonID
	among  []session.PersonID
}

// open shows a page, from which one goes back to here.
func (m *Model) open(page ui.ScreenID) {
	if page == m.active && page != ui.PersonScreen {
		return
	}
	here := origin{screen: m.active}
	here.person, here.among = m.person.Shown()
	m.back = append(m.back, here)
	m.active = page
	m.surveyScreen()
}

// showPerson shows a person's page, from which one goes back to here.
func (m *Model) showPerson(i ui.ShowPerson) {
	m.open(ui.PersonScreen)
	m.person.Show(i.Person, i.Among)
	m.surveyScreen()
}

// goBack goes back from a page, by one step. What was typed or chosen there is as it was.
func (m *Model) goBack() {
	if len(m.back) == 0 && m.past != nil {
		m.leavePast()
		return
	}
	if len(m.back) == 0 {
		m.goTo(ui.Courts)
		return
	}
	last := m.back[len(m.back)-1]
	m.back = m.back[:len(m.back)-1]
	m.active = last.screen
	m.person.Show(last.person, last.among)
	m.surveyScreen()
}

// tab is the screen whose tab is marked: of a page the one that it was opened from.
func (m *Model) tab() ui.ScreenID {
	switch {
	case m.active < ui.ScreenCount:
		return m.active
	case len(m.back) > 0:
		return m.back[0].screen
	}
	return ui.Courts
}

// pageNames are the names of the pages.
var pageNames = map[ui.ScreenID]string{
	ui.PersonScreen: "A person's page",
	ui.CallingPage:  "Reading the call out",
	ui.TimelinePage: "The night by its courts",
	ui.SummaryPage:  "The night in short",
}

// screenName is the name of the screen that is shown.
func (m *Model) screenName() string {
	if name, ok := pageNames[m.active]; ok {
		return name
	}
	return tabs[m.active].name
}
