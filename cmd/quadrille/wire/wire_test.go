package wire

import (
	"context"
	"fmt"
	"io"
	"net"
	"os"
	"path/filepath"
	"runtime"
	"slices"
	"strings"
	"sync"
	"testing"
	"time"

	"github.com/adrg/xdg"
	"go.uber.org/goleak"

	"club/quadrille/session/public"
)

func TestMain(m *testing.M) { goleak.VerifyTestMain(m) }

// limit is how long a test waits for what must come at once: far longer, since a machine may be busy.
const limit = 30 * time.Second

// quick is a pace with which a test need not wait.
var quick = pace{hello: 200 * time.Millisecond, write: 200 * time.Millisecond, beat: 50 * time.Millisecond}

// eager is a patience with which a test need not wait.
var eager = patience{dial: 5 * time.Second, alive: 5 * time.Second, first: 5 * time.Millisecond, most: 50 * time.Millisecond}

// folder is one whose path is short enough for a socket, which that of a test with a long name is not.
func folder(t testing.TB) string {
	t.Helper()
	at, err := os.MkdirTemp("", "q")
	if err != nil {
		t.Fatal(err)
	}
	t.Cleanup(func() { _ = os.RemoveAll(at) })
	return at
}

// openDesk serves the club file.
func openDesk(t testing.TB, clubFile string, p pace) *Server {
	t.Helper()
	l, err := Listen(clubFile)
	if err != nil {
		t.Fatal(err)
	}
	s := serve(l, "v1", p)
	t.Cleanup(func() { _ = s.Close() })
	return s
}

// show makes a view the newest, with its number in it.
func show(s *Server, seq uint64) {
	s.Show(func() ([]byte, error) { return Encode(public.View{Version: public.Version, Seq: seq}) })
}

// watcher is a board that keeps what it heard.
type watcher struct {
	t    testing.TB
	stop func()
	mu   sync.Mutex
	news []News
	came chan struct{}
}

func watch(t testing.TB, clubFile string) *watcher {
	t.Helper()
	ctx, cancel := context.WithCancel(context.Background())
	w := &watcher{t: t, came: make(chan struct{}, 1)}
	done := make(chan struct{})
	go func() {
		defer close(done)
		follow(ctx, places(clubFile), newHello(isBoard, "v1"), eager, func(n News) {
			w.mu.Lock()
			w.news = append(w.news, n)
			w.mu.Unlock()
			select {
			case w.came <- struct{}{}:
			default:
			}
		})
	}()
	w.stop = func() { cancel(); <-done }
	t.Cleanup(w.stop)
	return w
}

// until waits for news.
func (w *watcher) until(what string, ok func(News) bool) {
	w.t.Helper()
	deadline := time.After(limit)
	for {
		w.mu.Lock()
		last := News{}
		if k := len(w.news); k > 0 {
			last = w.news[k-1]
		}
		w.mu.Unlock()
		if ok(last) {
			return
		}
		select {
		case <-w.came:
		case <-deadline:
			w.t.Fatalf("the board never hears %s; the last was %+v", what, last)
		}
	}
}

func (w *watcher) sees(seq uint64) {
	w.t.Helper()
	w.until(fmt.Sprintf("view %d", seq), func(n News) bool { return n.View != nil && n.View.Seq == seq })
}

// TestBoardsFollow the desk: what is shown before and after they come, the end of a board, the end of the desk
// and the next one. What comes faster than a board reads is left out but for the newest.
func TestBoardsFollow(t *testing.T) {
	club := filepath.Join(folder(t), "club.qdb")
	one := watch(t, club)
	one.until("that no desk is there", func(n News) bool { return n.View == nil && n.Why == "" })
	desk := openDesk(t, club, quick)
	show(desk, 1)
	one.sees(1)
	two := watch(t, club)
	two.sees(1)
	for seq := range uint64(2000) {
		show(desk, seq)
	}
	one.sees(1999)
	two.sees(1999)
	one.stop()
	show(desk, 3000)
	two.sees(3000)
	if err := desk.Close(); err != nil {
		t.Fatal(err)
	}
	two.until("that the desk is gone", func(n News) bool { return n.View == nil })
	show(openDesk(t, club, quick), 4000)
	two.sees(4000)
}

// TestNothingIsMadeForNobody: a desk that no board follows does no work for boards, and one state is made
// once for all of them.
func TestNothingIsMadeForNobody(t *testing.T) {
	club := filepath.Join(folder(t), "club.qdb")
	desk := openDesk(t, club, quick)
	made := make(chan int, 100)
	for i := range 50 {
		desk.Show(func() ([]byte, error) { made <- i; return Encode(public.View{Seq: uint64(i)}) })
	}
	one, two := watch(t, club), watch(t, club)
	one.sees(49)
	two.sees(49)
	if len(made) != 1 || <-made != 49 {
		t.Errorf("%d states were made for two boards that saw one", len(made)+1)
	}
}

// TestTheSocketIsPrivate: only its owner may open it, and it goes with the desk.
func TestTheSocketIsPrivate(t *testing.T) {
	club := filepath.Join(folder(t), "club.qdb")
	desk := openDesk(t, club, quick)
	info, err := os.Lstat(club + ".sock")
	if err != nil || runtime.GOOS != "windows" && info.Mode().Perm() != 0o600 {
		t.Fatalf("the socket is %v, %v", info, err)
	}
	if _, err := Listen(club); err == nil || !strings.Contains(err.Error(), "cannot follow") {
		t.Errorf("a second desk listens too: %v", err)
	}
	_ = desk.Close()
	if left, _ := os.ReadDir(filepath.Dir(club)); len(left) > 0 {
		t.Errorf("the desk leaves %v", left)
	}
}

// TestWhatStandsInTheWay: the socket of a desk that was killed is taken away; a file that is none is left, and
// the boards meet the desk elsewhere.
func TestWhatStandsInTheWay(t *testing.T) {
	private(t)
	club := filepath.Join(folder(t), "club.qdb")
	stale, err := net.ListenUnix("unix", &net.UnixAddr{Name: club + ".sock", Net: "unix"})
	if err != nil {
		t.Fatal(err)
	}
	stale.SetUnlinkOnClose(false)
	_ = stale.Close()
	if _, err := os.Lstat(club + ".sock"); err != nil {
		t.Fatal(err)
	}
	desk := openDesk(t, club, quick)
	show(desk, 5)
	watch(t, club).sees(5)
	_ = desk.Close()

	if err := os.WriteFile(club+".sock", []byte("precious"), 0o600); err != nil {
		t.Fatal(err)
	}
	show(openDesk(t, club, quick), 6)
	watch(t, club).sees(6)
	if text, err := os.ReadFile(club + ".sock"); string(text) != "precious" {
		t.Errorf("the file that stood there is %q, %v", text, err)
	}
}

// TestAPathThatIsTooLong for a socket: desk and boards meet in a folder of the user's own, and not in one that
// others may write to.
func TestAPathThatIsTooLong(t *testing.T) {
	if runtime.GOOS == "windows" {
		t.Skip("Windows keeps who may open a folder elsewhere")
	}
	temporary := private(t)
	club := filepath.Join(folder(t), strings.Repeat("long", 30), "club.qdb")
	if err := os.MkdirAll(filepath.Dir(club), 0o700); err != nil {
		t.Fatal(err)
	}
	desk := openDesk(t, club, quick)
	if at := desk.listener.Addr().String(); len(at) > maxPath || strings.HasPrefix(at, filepath.Dir(club)) {
		t.Errorf("the socket is at %s", at)
	}
	show(desk, 7)
	watch(t, club).sees(7)
	_ = desk.Close()

	all := places(club)
	last := all[len(all)-1]
	if !strings.HasPrefix(last.folder, temporary) {
		t.Fatalf("the last place is %+v", last)
	}
	if err := os.MkdirAll(last.folder, 0o700); err != nil {
		t.Fatal(err)
	}
	if err := os.Chmod(last.folder, 0o777); err != nil {
		t.Fatal(err)
	}
	if l, err := last.listen(); err == nil || !strings.Contains(err.Error(), "only you may open") {
		t.Errorf("a folder that anybody may write to is taken: %v, %v", l, err)
	}
}

// private gives the test a folder for temporary files and for sockets that no desk of the developer's uses.
func private(t *testing.T) string {
	t.Helper()
	at := folder(t)
	t.Cleanup(xdg.Reload) // after the environment is as it was
	t.Setenv("TMPDIR", at)
	t.Setenv("XDG_RUNTIME_DIR", at)
	xdg.Reload()
	return at
}

// TestOtherVersionsSaySo, in words, on both sides and whichever is older.
func TestOtherVersionsSaySo(t *testing.T) {
	desk := newHello(isDesk, "v2")
	for _, c := range []struct {
		board hello
		want  string
	}{
		{newHello(isBoard, "v1"), ""},
		{hello{isBoard, Protocol - 1, public.Version, "v1", "", ""}, "an older Quadrille (v1) than the desk (v2)"},
		{hello{isBoard, Protocol, public.Version - 1, "v1", "", ""}, "an older Quadrille"},
		{hello{isBoard, Protocol + 1, 0, "v3\x1b[31m", "", ""}, "a newer Quadrille (v3[31m)"},
		{hello{isBoard, Protocol, public.Version + 1, "v3", "", ""}, "a newer Quadrille"},
	} {
		if got := fits(c.board, desk); !strings.Contains(got, c.want) || (got == "") != (c.want == "") {
			t.Errorf("to %+v the desk says %q, want %q", c.board, got, c.want)
		}
	}
	club := filepath.Join(folder(t), "club.qdb")
	openDesk(t, club, quick)
	c := meet(t, club, hello{isBoard, 99, 1, "v99", "", ""})
	answer, err := readHello(c, isDesk)
	if err != nil || !strings.Contains(answer.Refused, "newer Quadrille (v99)") {
		t.Errorf("the desk answers %+v, %v", answer, err)
	}
	if _, err := readFrame(c, maxView); err == nil {
		t.Error("a board that was refused follows all the same")
	}

	l, err := Listen(club + "2")
	if err != nil {
		t.Fatal(err)
	}
	defer l.Close()
	go func() {
		for {
			c, err := l.Accept()
			if err != nil {
				return
			}
			_, _ = readHello(c, isBoard)
			out, _ := frameOf(hello{Quadrille: isDesk, Protocol: 7, Program: "v7"})
			_, _ = c.Write(out)
			_ = c.Close()
		}
	}()
	watch(t, club+"2").until("that it is too old", func(n News) bool { return strings.Contains(n.Why, "older Quadrille (v1) than the desk (v7)") })
}

// meet opens a connection and says hello.
func meet(t testing.TB, club string, h hello) net.Conn {
	t.Helper()
	c, err := net.Dial("unix", club+".sock")
	if err != nil {
		t.Fatal(err)
	}
	t.Cleanup(func() { _ = c.Close() })
	_ = c.SetDeadline(time.Now().Add(limit))
	out, err := frameOf(h)
	if err != nil {
		t.Fatal(err)
	}
	if _, err := c.Write(out); err != nil {
		t.Fatal(err)
	}
	return c
}

// TestSixteenBoards follow, and one more is told so.
func TestSixteenBoards(t *testing.T) {
	club := filepath.Join(folder(t), "club.qdb")
	show(openDesk(t, club, quick), 1)
	var boards []net.Conn
	for range MaxBoards {
		c := meet(t, club, newHello(isBoard, "v1"))
		if answer, err := readHello(c, isDesk); err != nil || answer.Refused != "" {
			t.Fatalf("board %d hears %+v, %v", len(boards)+1, answer, err)
		}
		boards = append(boards, c)
	}
	late := watch(t, club)
	late.until("that there are too many", func(n News) bool { return strings.Contains(n.Why, "as many boards as it can have") })
	_ = boards[3].Close()
	late.sees(1)
}

// TestWhoDisturbsIsCutOff: a board that says more than hello, one that does not read, and one that says nothing.
func TestWhoDisturbsIsCutOff(t *testing.T) {
	club := filepath.Join(folder(t), "club.qdb")
	desk := openDesk(t, club, quick)
	good := watch(t, club)
	ended := func(what string, c net.Conn) {
		t.Helper()
		if _, err := io.Copy(io.Discard, c); err != nil {
			if late, ok := err.(net.Error); ok && late.Timeout() {
				t.Errorf("%s is not cut off", what)
			}
		}
	}
	talks := meet(t, club, newHello(isBoard, "v1"))
	if _, err := talks.Write([]byte("x")); err == nil {
		ended("a board that talks", talks)
	}
	silent, err := net.Dial("unix", club+".sock")
	if err != nil {
		t.Fatal(err)
	}
	defer silent.Close()
	_ = silent.SetDeadline(time.Now().Add(limit))
	ended("a board that says nothing", silent)

	meet(t, club, newHello(isBoard, "v1")) // never reads
	large := strings.Repeat("x", 1<<20)
	for seq := range uint64(20) {
		desk.Show(func() ([]byte, error) { return Encode(public.View{Seq: seq, Night: large}) })
		good.sees(seq)
	}
	gone := time.Now().Add(limit)
	for following := 2; following > 1; {
		desk.mu.Lock()
		following = desk.following()
		desk.mu.Unlock()
		if time.Now().After(gone) {
			t.Fatal("a board that does not read follows for ever")
		}
		time.Sleep(time.Millisecond)
	}
}

// TestHostileClients: a million random bytes and a thousand connections at the socket, and a board that
// follows sees each state all the same; nothing is left of them.
func TestHostileClients(t *testing.T) {
	club := filepath.Join(folder(t), "club.qdb")
	desk := openDesk(t, club, quick)
	good := watch(t, club)
	show(desk, 1)
	good.sees(1)
	var attack sync.WaitGroup
	random := noise(1_000_000)
	attack.Go(func() {
		for part := range slices.Chunk(random, 10_000) {
			if c, err := net.Dial("unix", club+".sock"); err == nil {
				_ = c.SetDeadline(time.Now().Add(time.Second))
				_, _ = c.Write(part)
				_ = c.Close()
			}
		}
	})
	attack.Go(func() {
		var held []net.Conn
		for range 1000 {
			if c, err := net.Dial("unix", club+".sock"); err == nil {
				held = append(held, c)
			}
		}
		for _, c := range held {
			_ = c.Close()
		}
	})
	for seq := range uint64(50) {
		show(desk, seq)
		good.sees(seq)
	}
	attack.Wait()
	show(desk, 99)
	good.sees(99)
	watch(t, club).sees(99)
}

// noise is random bytes, the same each time.
func noise(n int) []byte {
	out, x := make([]byte, n), uint64(88172645463325252)
	for i := range out {
		x ^= x << 13
		x ^= x >> 7
		x ^= x << 17
		out[i] = byte(x)
	}
	return out
}
