package roster

import (
	"fmt"
	"os"
	"path/filepath"
	"reflect"
	"strings"
	"testing"
	"time"
)

func TestParse(t *testing.T) {
	got, err := Parse(strings.NewReader("\xef\xbb\xbfLevel, NAME ,arrive,leave,partner_with,keep_apart,phone,Not partner,Court\n" +
		"\"3,5\",Ada Alder,19:40,5,Ben Brook*2,Cy;Di,555,,2; Centre\n,Ben Brook,,,,,,Di\n,Cy\n,Di,3,21:05\n"))
	if err != nil {
		t.Fatal(err)
	}
	want := []Entry{
		{
			Line: 2, Name: "Ada Alder", Level: 3.5, Arrive: Moment{Clock: 19*time.Hour + 40*time.Minute, IsClock: true},
			Leave: Moment{Round: 5}, PartnerWith: []Partner{{"Ben Brook", 2}}, KeepApart: []string{"Cy", "Di"}, Courts: []string{"2", "Centre"},
		},
		{Line: 3, Name: "Ben Brook", NotPartner: []string{"Di"}},
		{Line: 4, Name: "Cy"},
		{Line: 5, Name: "Di", Arrive: Moment{Round: 3}, Leave: Moment{Clock: 21*time.Hour + 5*time.Minute, IsClock: true}},
	}
	if !reflect.DeepEqual(got, want) {
		t.Errorf("got  %+v\nwant %+v", got, want)
	}
}

func TestParseSaysWhatIsWrong(t *testing.T) {
	for in, want := range map[string]string{
		"":                                    "the roster is empty",
		"mail\na@b\n":                         "no column name",
		"name\n":                              "a header and no people",
		"name,name\nA,B\n":                    "column name twice",
		"name,courts\nAda,1;the far one\n":    `line 2: courts "the far one" is too long: the name of a court has at most 8 letters`,
		"name,level\nAda,high\n":              `line 2: level "high" is no number`,
		"name,level\nAda,10.1\n":              "is no number from 0 to 10",
		"name,level\nAda,-0.1\n":              "is no number from 0 to 10",
		"name,level\nAda,NaN\n":               "is no number from 0 to 10",
		"name,arrive\nAda,7pm\n":              `line 2: arrive: "7pm" is neither a time such as 19:40 nor a round`,
		"name,leave\nAda,25:00\n":             "no time of day",
		"name,group\nAda,x\n ,y\n":            "line 3: the name is missing",
		"name\nAda\nada\n":                    "line 3: ada stands on line 2 already",
		"name,keep_apart\nAda,Zed\n":          "Ada names Zed, who is not on the roster",
		"name,partner_with\nAda,Ada\n":        "cannot be with or apart from the same person",
		"name,partner_with\nA,B*x\nB,\n":      "write how often as Name*2",
		"name\n\"Ada\n":                       "no CSV: the quotation mark on line 2",
		"name,gender\nAda,unspecified yet\n":  "line 2: group (the column gender) \"unspecified yet\" is too long: a word of at most 12 letters",
		"name,Rating\nAda,1450\n":             "line 2: level (the column Rating) \"1450\" is no number from 0 to 10",
		"name,gender,sex\nAda,x,y\n":          "both gender and sex could be the column group: rename one of them to group",
		"First name,Name\nAda,Alder\n":        "a column name beside one of half names",
		"Surname\n" + strings.Repeat("x", 81): "line 2: a name may be 80 cells wide",
		"name\n\u200b\u200d,\n":               "line 2: a name needs at least one letter",
		"PK\x03\x04xl/":                       "save it as CSV",
	} {
		if _, err := Parse(strings.NewReader(in)); err == nil || !strings.Contains(err.Error(), want) {
			t.Errorf("Parse(%q) = %v, want an error with %q", in, err, want)
		}
	}
}

// The words that people use are understood, what was taken for what is said, and names become those that people
// call out.
func TestRostersAsClubsHaveThem(t *testing.T) {
	for text, want := range map[string]string{
		"First Name;Last Name;Gender;Skill Level;Phone\nAda;Alder;f;3,5;555\n;Brook;m;;\n": "Ada Alder f 3.5, Brook m 0 | taken: the column Last Name for surname, Gender for group, Skill Level for level | not used: the column Phone",
		"Given name\tSurname\tFrom\tUntil\nAda\tAlder\t19:40\t5\n":                         "Ada Alder  0 19h40m0s-5 | taken: the column Given name for first name, From for arrive, Until for leave",
		"Player\n\"Alder, Ada\"\n\"Brook, Ben\"\n":                                         "Ada Alder  0, Ben Brook  0 | taken: the column Player for name | names written surname first were turned round: Ada Alder, Ben Brook…",
		"name,partner_with\n\"Alder, Ada\",\"Brook, Ben*2\"\n\"Brook, Ben\",\n":            "Ada Alder  0 with Ben Brook, Ben Brook  0 | names written surname first were turned round: Ada Alder, Ben Brook…",
		"name\n\"Alder, Ada\"\nBen\n":                                                      "Alder, Ada  0, Ben  0",
		"name,nights,games,last_night\nAda,1,7,2026-01-08\n":                               "Ada  0",
		"Ada Alder\n👩\u200d👧 Noll\n":                                                       "Ada Alder  0, 👩\u200d👧 Noll  0 | no header: each line was taken for a name",
		"name\n" + strings.Repeat("x", 80) + "\n":                                          strings.Repeat("x", 80) + "  0",
	} {
		read, err := Read(strings.NewReader(text))
		if err != nil {
			t.Errorf("%q: %v", text, err)
			continue
		}
		var people []string
		for _, e := range read.Entries {
			who := fmt.Sprintf("%s %s %v", e.Name, e.Group, e.Level)
			if !e.Arrive.IsZero() {
				who += fmt.Sprintf(" %v-%d", e.Arrive.Clock, e.Leave.Round)
			}
			for _, p := range e.PartnerWith {
				who += " with " + p.Name
			}
			people = append(people, who)
		}
		if got := strings.Join(append([]string{strings.Join(people, ", ")}, read.Notes...), " | "); got != want {
			t.Errorf("%q\ngives %q\nwant  %q", text, got, want)
		}
	}
}

// The same four people stand in a file of each kind.
func TestRostersOfEveryKind(t *testing.T) {
	files, err := filepath.Glob(filepath.Join("..", "..", "testdata", "rosters", "*"))
	if err != nil || len(files) < 9 {
		t.Fatalf("%d files, %v", len(files), err)
	}
	for _, file := range files {
		if filepath.Ext(file) == ".md" {
			continue
		}
		f, err := os.Open(file)
		if err != nil {
			t.Fatal(err)
		}
		read, err := Read(f)
		f.Close()
		var names []string
		for _, e := range read.Entries {
			names = append(names, e.Name)
		}
		if got := strings.Join(names, ", "); err != nil || got != "Jürgen Müller, Zoë Alder, Ōno Brook, Edda Noll" &&
			got != "Jürgen Müller, Zoë Alder, Øno Brook, Edda Noll" {
			t.Errorf("%s: %s, %v", filepath.Base(file), got, err)
		}
	}
}

func TestRostersOfTheProject(t *testing.T) {
	for file, people := range map[string]int{"roster18.csv": 18, "roster37.csv": 37} {
		f, err := os.Open(filepath.Join("..", "..", "testdata", file))
		if err != nil {
			t.Fatal(err)
		}
		entries, err := Parse(f)
		f.Close()
		if err != nil || len(entries) != people {
			t.Errorf("%s: %d people, %v", file, len(entries), err)
		}
	}
}

func FuzzParse(f *testing.F) {
	f.Add("name,group,level,arrive,leave,partner_with,keep_apart\nAda,x,3,19:00,5,Ben*2,Cy\nBen\nCy\n")
	f.Add("\xef\xbb\xbfname\n\"a\nb\"\n")
	f.Fuzz(func(t *testing.T, text string) {
		entries, err := Parse(strings.NewReader(text))
		if (err == nil) != (len(entries) > 0) && err == nil {
			t.Fatal("no error and no people")
		}
		if err != nil && len(entries) > 0 && !strings.Contains(err.Error(), "roster") {
			t.Fatalf("error %v does not say what it is about", err)
		}
	})
}

// TestTheEndsOfTheLevelsAreLevels.
func TestTheEndsOfTheLevelsAreLevels(t *testing.T) {
	for text, want := range map[string]float64{"": 0, "0": 0, "4,5": 4.5, "10": 10} {
		if got, err := level(text); err != nil || got != want {
			t.Errorf("%q is %g, %v", text, got, err)
		}
	}
}
