// Package browser is a real browser for tests of the page for phones: a headless Chromium, where one is installed.
package browser

import (
	"context"
	"os"
	"os/exec"
	"path/filepath"
	"strconv"
	"strings"
	"testing"
	"time"

	"github.com/chromedp/cdproto/cdp"
	"github.com/chromedp/cdproto/emulation"
	"github.com/chromedp/chromedp"
)

// names are those under which systems have it.
var names = []string{"chromium", "chromium-browser", "google-chrome", "google-chrome-stable", "headless-shell"}

// Browser is one that runs until the test ends.
type Browser struct {
	t   *testing.T
	ctx context.Context
}

// Tab is a page of its own, with nothing kept from others.
type Tab struct {
	t   *testing.T
	ctx context.Context
}

// patience is how long a page may take to show what it must: far longer than it does, since a machine may be busy.
const patience = 40 * time.Second

// Open starts a browser, or skips the test where there is none that starts.
func Open(t *testing.T) *Browser {
	t.Helper()
	if testing.Short() {
		t.Skip("a browser takes seconds to start: not with -short")
	}
	path := ""
	for _, name := range names {
		if found, err := exec.LookPath(name); err == nil {
			path = found
			break
		}
	}
	if path == "" {
		t.Skipf("no browser is installed here (%s): the page is not looked at", strings.Join(names, ", "))
	}
	options := append([]chromedp.ExecAllocatorOption{}, chromedp.DefaultExecAllocatorOptions[:]...)
	options = append(options, chromedp.ExecPath(path), chromedp.UserDataDir(t.TempDir()), chromedp.DisableGPU, chromedp.WSURLReadTimeout(patience))
	if os.Getuid() == 0 {
		options = append(options, chromedp.NoSandbox) // it does not run as root otherwise, and visits nothing but our page
	}
	allocator, release := chromedp.NewExecAllocator(context.Background(), options...)
	ctx, stop := chromedp.NewContext(allocator)
	t.Cleanup(func() {
		_ = chromedp.Cancel(ctx)
		stop()
		release()
	})
	if err := chromedp.Do(ctx); err != nil {
		t.Skipf("%s does not start here, so the page is not looked at: %v", path, err) // some systems have only a hint how to get one
	}
	return &Browser{t, ctx}
}

// Tab opens a page of a size in a window of its own.
func (b *Browser) Tab(width, height int64) *Tab {
	b.t.Helper()
	ctx, stop := chromedp.NewContext(b.ctx, chromedp.WithNewBrowserContext())
	b.t.Cleanup(stop)
	if err := chromedp.Do(ctx); err != nil { // which makes the page, so that no limit of time ends it
		b.t.Fatal(err)
	}
	return (&Tab{b.t, ctx}).do(chromedp.EmulateViewport(width, height))
}

// do lets the browser do something, in the time that it may take.
func (t *Tab) do(steps ...chromedp.Action[chromedp.Void]) *Tab {
	t.t.Helper()
	get(t, chromedp.Steps(steps...))
	return t
}

// get asks the browser for something.
func get[T any](t *Tab, what chromedp.Action[T]) T {
	t.t.Helper()
	ctx, stop := context.WithTimeout(t.ctx, patience)
	defer stop()
	value, err := chromedp.Run(ctx, what)
	if err != nil {
		t.t.Fatalf("the browser: %v", err)
	}
	return value
}

// call sends the browser a command of its protocol.
func call[P, R any](t *Tab, command cdp.Command[P, R], params P) R {
	t.t.Helper()
	return get(t, func(ctx context.Context, target *chromedp.Target) (R, error) {
		return cdp.Call(ctx, target, command, params)
	})
}

// WithoutScripts turns JavaScript off.
func (t *Tab) WithoutScripts() *Tab {
	t.t.Helper()
	call(t, emulation.SetScriptExecutionDisabled, emulation.SetScriptExecutionDisabledParams{Value: true})
	return t
}

// Prefers sets what the person prefers, as style sheets ask for it ("prefers-color-scheme", "dark").
func (t *Tab) Prefers(feature, value string) *Tab {
	t.t.Helper()
	call(t, emulation.SetEmulatedMedia, emulation.SetEmulatedMediaParams{Features: []*emulation.MediaFeature{{Name: feature, Value: value}}})
	return t
}

// Go opens a page.
func (t *Tab) Go(url string) *Tab {
	t.t.Helper()
	return t.do(chromedp.Navigate(url))
}

// Again looks at the same address again.
func (t *Tab) Again() *Tab {
	t.t.Helper()
	return t.Go(get(t, chromedp.Location()))
}

// Text is what stands in the first element that a selector finds, empty where there is none, or no page yet.
func (t *Tab) Text(selector string) string {
	ctx, stop := context.WithTimeout(t.ctx, patience)
	defer stop()
	text, _ := chromedp.Run(ctx, chromedp.Evaluate[string](`(document.querySelector(`+strconv.Quote(selector)+`)||{innerText:""}).innerText`))
	return text // a page that is just being replaced says nothing
}

// Shows waits until an element has a text.
func (t *Tab) Shows(selector, text string) *Tab {
	t.t.Helper()
	for end := time.Now().Add(patience); ; time.Sleep(10 * time.Millisecond) {
		if strings.Contains(t.Text(selector), text) {
			return t
		}
		if time.Now().After(end) {
			t.t.Fatalf("%s never has %q:\n%s", selector, text, t.Text("body"))
		}
	}
}

// Choose picks a name in the list of people, and sends the form by its button.
func (t *Tab) Choose(name string) *Tab {
	t.t.Helper()
	list := chromedp.CSS("#me")
	return t.do(chromedp.Focus(list), chromedp.SendKeys(list, name), chromedp.Click(chromedp.CSS("form button")))
}

// Type types into a field.
func (t *Tab) Type(selector, text string) *Tab {
	t.t.Helper()
	field := chromedp.CSS(selector)
	return t.do(chromedp.Focus(field), chromedp.SendKeys(field, text))
}

// Press presses a button, a link or a box.
func (t *Tab) Press(selector string) *Tab {
	t.t.Helper()
	return t.do(chromedp.Click(chromedp.CSS(selector)))
}

// Picture keeps a picture of the whole page in a folder, unless that is "".
func (t *Tab) Picture(folder, name string) *Tab {
	t.t.Helper()
	if folder == "" {
		return t
	}
	if err := os.WriteFile(filepath.Join(folder, name+".png"), get(t, chromedp.FullScreenshot(100)), 0o644); err != nil {
		t.t.Fatal(err)
	}
	return t
}
