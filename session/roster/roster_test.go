package roster

import (
	"os"
	"path/filepath"
	"reflect"
	"strings"
	"testing"
	"time"
)

func TestParse(t *testing.T) {
	got, err := Parse(strings.NewReader("\xef\xbb\xbfLevel, NAME ,arrive,leave,partner_with,keep_apart,phone\n" +
		"\"3,5\",Ada Alder,19:40,5,Ben Brook*2,Cy;Di,555\n,Ben Brook,,,,,\n,Cy\n,Di,3,21:05\n"))
	if err != nil {
		t.Fatal(err)
	}
	want := []Entry{
		{
			Line: 2, Name: "Ada Alder", Level: 3.5, Arrive: Moment{Clock: 19*time.Hour + 40*time.Minute, IsClock: true},
			Leave: Moment{Round: 5}, PartnerWith: []Partner{{"Ben Brook", 2}}, KeepApart: []string{"Cy", "Di"},
		},
		{Line: 3, Name: "Ben Brook"},
		{Line: 4, Name: "Cy"},
		{Line: 5, Name: "Di", Arrive: Moment{Round: 3}, Leave: Moment{Clock: 21*time.Hour + 5*time.Minute, IsClock: true}},
	}
	if !reflect.DeepEqual(got, want) {
		t.Errorf("got  %+v\nwant %+v", got, want)
	}
}

func TestParseSaysWhatIsWrong(t *testing.T) {
	for in, want := range map[string]string{
		"":                               "the roster is empty",
		"person\nAda\n":                  "no column name",
		"name\n":                         "a header and no people",
		"name,name\nA,B\n":               "column name twice",
		"name,level\nAda,high\n":         `line 2: level "high" is no number`,
		"name,level\nAda,NaN\n":          "is no number from 0 to 10",
		"name,arrive\nAda,7pm\n":         `line 2: arrive: "7pm" is neither a time such as 19:40 nor a round`,
		"name,leave\nAda,25:00\n":        "no time of day",
		"name,group\nAda,x\n ,y\n":       "line 3: the name is missing",
		"name\nAda\nada\n":               "line 3: ada stands on line 2 already",
		"name,keep_apart\nAda,Zed\n":     "Ada names Zed, who is not on the roster",
		"name,partner_with\nAda,Ada\n":   "cannot be with or apart from the same person",
		"name,partner_with\nA,B*x\nB,\n": "write how often as Name*2",
		"name\n\"Ada\n":                  "no CSV",
	} {
		if _, err := Parse(strings.NewReader(in)); err == nil || !strings.Contains(err.Error(), want) {
			t.Errorf("Parse(%q) = %v, want an error with %q", in, err, want)
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
