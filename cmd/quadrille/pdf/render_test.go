package pdf

import (
	"bytes"
	"fmt"
	"image"
	"image/png"
	"math"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"testing"

	"rsc.io/qr"

	"club/quadrille/session/paper"
)

// dots is at how many dots an inch pages are rendered.
const dots = 96

// rendered is the first page of a PDF as another program draws it.
func rendered(t *testing.T, made []byte) image.Image { return renderedAt(t, made, dots) }

func renderedAt(t *testing.T, made []byte, dots int) image.Image {
	t.Helper()
	tool, err := exec.LookPath("pdftoppm")
	if err != nil {
		t.Skip("poppler is not installed: apt-get install poppler-utils")
	}
	folder := t.TempDir()
	file := filepath.Join(folder, "sheet.pdf")
	if err := os.WriteFile(file, made, 0o600); err != nil {
		t.Fatal(err)
	}
	if out, err := exec.Command(tool, "-png", "-singlefile", "-r", fmt.Sprint(dots), file, filepath.Join(folder, "page")).CombinedOutput(); err != nil {
		t.Fatalf("%v: %s", err, out)
	}
	text, err := os.ReadFile(filepath.Join(folder, "page.png"))
	if err != nil {
		t.Fatal(err)
	}
	page, err := png.Decode(bytes.NewReader(text))
	if err != nil {
		t.Fatal(err)
	}
	return page
}

// dark tells whether a place of a page, in millimetres, is printed.
func dark(page image.Image, x, y float64) bool {
	r, _, _, _ := page.At(int(x/25.4*dots), int(y/25.4*dots)).RGBA()
	return r < 0x8000
}

// TestPagesNeedNoColour: what another program draws is black on white and nothing else, and stays off the margins that
// printers cannot reach, so that any printer prints it.
func TestPagesNeedNoColour(t *testing.T) {
	n := night(60, 14, 2)
	n.Phones = "http://192.168.1.20:8470/"
	for _, k := range paper.Kinds() {
		if os.Getenv("QUADRILLE_LONG") != "1" && k.Name != "rotation" && k.Name != "slips" {
			continue
		}
		page := rendered(t, write(t, k.Of(n), A4))
		bounds := page.Bounds()
		reach := int(math.Round((margin - 0.7) / 25.4 * dots)) // the ends of lines have a width, too
		inked := 0
		for y := range bounds.Dy() {
			for x := range bounds.Dx() {
				r, g, b, _ := page.At(x, y).RGBA()
				if r != g || g != b {
					t.Fatalf("%s has a colour at %d, %d", k.Name, x, y)
				}
				if r > 0xf000 {
					continue
				}
				inked++
				if x < reach || y < reach || x > bounds.Dx()-reach || y > bounds.Dy()-reach {
					t.Fatalf("%s is printed at %d, %d, beyond the margin", k.Name, x, y)
				}
			}
		}
		if share := float64(inked) / float64(bounds.Dx()*bounds.Dy()); share < 0.002 || share > 0.3 {
			t.Errorf("%s: %.1f %% of the page is printed", k.Name, 100*share)
		}
	}
}

// TestTheCodeOnTheWallLeadsToThePhonesPage: every square of it is drawn where it must be, with a border around it.
func TestTheCodeOnTheWallLeadsToThePhonesPage(t *testing.T) {
	for _, size := range []Size{A4, Letter} {
		n := night(64, 16, 3)
		n.Phones = "http://192.168.100.200:8470/"
		page := rendered(t, write(t, paper.Rotation(n), size))
		want, err := qr.Encode(n.Phones, qr.M)
		if err != nil {
			t.Fatal(err)
		}
		left := size.wide - margin - square*float64(want.Size)
		const border = 2 // squares that must be free below and at the left; the margin is at the other sides
		for row := -border; row < want.Size+border; row++ {
			for column := -border; column < want.Size+border; column++ {
				if got := dark(page, left+square*(float64(column)+0.5), margin+square*(float64(row)+0.5)); got != want.Black(column, row) {
					t.Fatalf("%v: the square %d, %d is dark: %v", size, column, row, got)
				}
			}
		}
	}
}

// TestTheCodeOnASlipLeadsToItsCourt: beside the heading of the first slip, whole, with a border, whatever the address.
func TestTheCodeOnASlipLeadsToItsCourt(t *testing.T) {
	for _, host := range []string{"192.168.100.200", "[FD12:3456:789A:BCDE:1234:5678:9ABC:DEF0]"} {
		n := night(16, 4, 3)
		n.Pages = map[string]string{"1": "HTTP://" + host + ":8470/C/ABCDEFGHIJKLMNOPQRSTUVWXYZ"}
		sheet := paper.Slips(n)
		page := renderedAt(t, write(t, sheet, A4), 4*dots) // the squares are small
		want, err := qr.Encode(n.Pages["1"], qr.M)
		if err != nil {
			t.Fatal(err)
		}
		if strings.Contains(strings.Join(sheet.Blocks[0].Lines, " "), "this court's page") != (sheet.Blocks[0].Code != "") || sheet.Blocks[0].Code == "" || sheet.Blocks[1].Code != "" {
			t.Errorf("the slips have %q and %q", sheet.Blocks[0].Code, sheet.Blocks[1].Code)
		}
		column := (A4.wide - 2*margin - between) / 2
		left := margin + column - slipSquare*float64(want.Size)
		top := topOf(page, 4*(left+slipSquare/2))
		wrong := 0
		const border = 2
		for row := -border; row < want.Size+border; row++ {
			for x := -border; x < want.Size+border; x++ {
				if dark(page, 4*(left+slipSquare*(float64(x)+0.5)), top+4*slipSquare*(float64(row)+0.5)) != want.Black(x, row) {
					wrong++
				}
			}
		}
		if wrong > 0 {
			t.Errorf("%s: %d of %d squares are wrong", host, wrong, want.Size*want.Size)
		}
	}
}

// topOf is where the first mark stands above a place of a page below its title, as [dark] counts.
func topOf(page image.Image, x float64) float64 {
	for y := 4 * (margin + 8); y < 800; y += 0.1 {
		if dark(page, x, y) {
			return y
		}
	}
	return 0
}
