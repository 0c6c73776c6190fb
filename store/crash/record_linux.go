package crash

import (
	"bytes"
	"errors"
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"runtime"
	"strconv"
	"strings"
	"syscall"
	"unsafe"

	"golang.org/x/sys/unix"
)

// Record runs a program to its end and notes what it does to the files below dir. What the program prints
// are numbers, a line each: the newest record that it has acknowledged. The error is
// [ErrCannotRecord] where the system lets nobody watch.
func Record(cmd *exec.Cmd, dir string) (*Trace, error) {
	// The system reports only to the thread that began to watch.
	runtime.LockOSThread()
	defer runtime.UnlockOSThread()
	null, err := os.OpenFile(os.DevNull, os.O_WRONLY, 0)
	if err != nil {
		return nil, err
	}
	defer null.Close()
	cmd.Stdout = null
	cmd.SysProcAttr = &syscall.SysProcAttr{Ptrace: true, Setpgid: true}
	if err := cmd.Start(); err != nil {
		return nil, fmt.Errorf("%w: %w", ErrCannotRecord, err)
	}
	defer cmd.Process.Release() // it was waited for by its number
	w := &watcher{
		pid: cmd.Process.Pid, dir: dir, trace: &Trace{},
		calls: map[int]*call{}, files: map[int]int{}, folders: map[int]string{}, at: map[int]int64{}, names: map[string]int{},
	}
	defer func() {
		_ = syscall.Kill(w.pid, syscall.SIGKILL) // it has ended, unless watching failed
	}()
	if err := w.begin(); err != nil {
		return nil, err
	}
	return w.trace, w.watch()
}

// A watcher follows a program from system call to system call.
type watcher struct {
	pid     int
	dir     string
	trace   *Trace
	calls   map[int]*call  // of each thread, the one that it is in
	files   map[int]int    // by descriptor
	folders map[int]string // by descriptor
	at      map[int]int64  // where the next write goes, by descriptor
	names   map[string]int // which file has a name
	made    int
}

// A call is a system call that has begun.
type call struct {
	number uint64
	args   [6]uint64
	data   []byte // what is to be written
	path   string
	to     string
	covers int // how many operations had ended when it began
}

func (w *watcher) begin() error {
	var status syscall.WaitStatus
	if _, err := syscall.Wait4(w.pid, &status, 0, nil); err != nil {
		return fmt.Errorf("%w: %w", ErrCannotRecord, err)
	}
	const options = unix.PTRACE_O_TRACESYSGOOD | unix.PTRACE_O_TRACECLONE | unix.PTRACE_O_EXITKILL
	if err := syscall.PtraceSetOptions(w.pid, options); err != nil {
		return fmt.Errorf("%w: %w", ErrCannotRecord, err)
	}
	return syscall.PtraceSyscall(w.pid, 0)
}

// watch goes on until the program has ended. The program is a group of its own, so that no other process
// of ours is waited for.
func (w *watcher) watch() error {
	for {
		var status syscall.WaitStatus
		tid, err := syscall.Wait4(-w.pid, &status, unix.WALL, nil)
		switch {
		case errors.Is(err, syscall.EINTR):
			continue
		case err != nil:
			return fmt.Errorf("watching: %w", err)
		case tid == w.pid && status.Exited() && status.ExitStatus() == 0:
			return nil
		case tid == w.pid && (status.Exited() || status.Signaled()):
			return fmt.Errorf("the program that is watched failed (status %#x)", int(status))
		case !status.Stopped():
			continue // a thread has ended
		}
		pass, err := w.stopped(tid, status.StopSignal())
		if err != nil {
			return fmt.Errorf("watching: %w", err)
		}
		// A thread may have ended meanwhile, with all others.
		if err := syscall.PtraceSyscall(tid, int(pass)); err != nil && !errors.Is(err, syscall.ESRCH) {
			return fmt.Errorf("watching: %w", err)
		}
	}
}

// stopped handles a thread that waits, and says which signal it is to be given.
func (w *watcher) stopped(tid int, signal syscall.Signal) (syscall.Signal, error) {
	switch signal {
	case syscall.SIGTRAP | 0x80:
		return 0, w.step(tid)
	case syscall.SIGTRAP, syscall.SIGSTOP: // a new thread
		return 0, nil
	}
	return signal, nil
}

// callInfo is what the system says of a call (struct ptrace_syscall_info in linux/ptrace.h).
type callInfo struct {
	op   uint8 // 1 it begins, 2 it ends
	_    [3]uint8
	_    uint32
	_    [2]uint64
	data [8]uint64 // at the beginning: number and arguments; at the end: the result
}

// step notes the beginning or the end of a call.
func (w *watcher) step(tid int) error {
	var info callInfo
	const getInfo = 0x420e // PTRACE_GET_SYSCALL_INFO
	if _, _, err := syscall.Syscall6(syscall.SYS_PTRACE, getInfo, uintptr(tid), unsafe.Sizeof(info),
		uintptr(unsafe.Pointer(&info)), 0, 0); err != 0 {
		return err
	}
	switch info.op {
	case 1:
		c := &call{number: info.data[0], covers: len(w.trace.Ops)}
		copy(c.args[:], info.data[1:])
		w.calls[tid] = c
		return w.look(c)
	case 2:
		if c := w.calls[tid]; c != nil {
			delete(w.calls, tid)
			if result := int64(info.data[0]); result >= 0 {
				return w.note(c, result)
			}
		}
	}
	return nil
}

// look reads what a call is given, which may be gone when it ends.
func (w *watcher) look(c *call) (err error) {
	switch c.number {
	case unix.SYS_OPENAT, unix.SYS_UNLINKAT:
		c.path, err = w.text(c.args[1])
	case unix.SYS_RENAMEAT, unix.SYS_LINKAT, unix.SYS_RENAMEAT2:
		if c.path, err = w.text(c.args[1]); err == nil {
			c.to, err = w.text(c.args[3])
		}
	case unix.SYS_WRITE, unix.SYS_PWRITE64:
		if _, ours := w.files[int(c.args[0])]; ours || c.args[0] == 1 {
			c.data, err = w.memory(c.args[1], int(c.args[2]))
		}
	}
	return err
}

// memory reads the program's memory.
func (w *watcher) memory(at uint64, size int) ([]byte, error) {
	out := make([]byte, size)
	f, err := os.Open(fmt.Sprintf("/proc/%d/mem", w.pid))
	if err != nil {
		return nil, err
	}
	defer f.Close()
	_, err = f.ReadAt(out, int64(at))
	return out, err
}

// text reads a path, which ends with a zero.
func (w *watcher) text(at uint64) (string, error) {
	const page = 4096
	var out []byte
	for {
		some, err := w.memory(at, int(page-at%page))
		if err != nil {
			return "", err
		}
		if i := bytes.IndexByte(some, 0); i >= 0 {
			return string(append(out, some[:i]...)), nil
		}
		out = append(out, some...)
		at += uint64(len(some))
	}
}

// inside is a path within the folder, false for one elsewhere.
func (w *watcher) inside(path string) (string, bool) {
	in, err := filepath.Rel(w.dir, path)
	return in, err == nil && filepath.IsAbs(path) && in != ".." && !strings.HasPrefix(in, "../")
}

func (w *watcher) add(op Op) { w.trace.Ops = append(w.trace.Ops, op) }

// note notes a call that succeeded.
func (w *watcher) note(c *call, result int64) error {
	fd := int(c.args[0])
	file, ours := w.files[fd]
	switch c.number {
	case unix.SYS_OPENAT:
		w.opened(int(result), c)
	case unix.SYS_CLOSE:
		delete(w.files, fd)
		delete(w.folders, fd)
	case unix.SYS_WRITE:
		if fd == 1 {
			return w.acknowledged(c.data)
		}
		if ours {
			w.add(Op{Kind: Write, File: file, Offset: w.at[fd], Data: c.data[:result]})
			w.at[fd] += result
		}
	case unix.SYS_READ:
		w.at[fd] += result
	case unix.SYS_LSEEK:
		w.at[fd] = result
	case unix.SYS_PWRITE64:
		if ours {
			w.add(Op{Kind: Write, File: file, Offset: int64(c.args[3]), Data: c.data[:result]})
		}
	case unix.SYS_FTRUNCATE:
		if ours {
			w.add(Op{Kind: Truncate, File: file, Size: int64(c.args[1])})
		}
	case unix.SYS_FSYNC, unix.SYS_FDATASYNC:
		if dir, ok := w.folders[fd]; ok {
			w.add(Op{Kind: SyncDir, Path: dir, Covers: c.covers})
		} else if ours {
			w.add(Op{Kind: Sync, File: file, Covers: c.covers})
		}
	case unix.SYS_RENAMEAT, unix.SYS_RENAMEAT2, unix.SYS_LINKAT, unix.SYS_UNLINKAT:
		return w.renamed(c)
	}
	return nil
}

// opened notes a descriptor, and the file if it is new.
func (w *watcher) opened(fd int, c *call) {
	delete(w.files, fd)
	delete(w.folders, fd)
	w.at[fd] = 0
	path, inside := w.inside(c.path)
	if !inside {
		return
	}
	if info, err := os.Stat(c.path); err == nil && info.IsDir() {
		w.folders[fd] = path
		return
	}
	if _, known := w.names[path]; !known {
		w.made++
		w.names[path] = w.made
		w.add(Op{Kind: Create, File: w.made, Path: path})
	}
	w.files[fd] = w.names[path]
	if c.args[2]&unix.O_TRUNC != 0 {
		w.add(Op{Kind: Truncate, File: w.names[path]})
	}
}

// renamed notes that a file has another name, or one less.
func (w *watcher) renamed(c *call) error {
	path, inside := w.inside(c.path)
	if !inside {
		return nil
	}
	to, _ := w.inside(c.to)
	op := Op{Path: path, To: to}
	switch c.number {
	case unix.SYS_UNLINKAT:
		op.Kind, op.To = Unlink, ""
		delete(w.names, path)
	case unix.SYS_LINKAT:
		op.Kind = Link
		w.names[to] = w.names[path]
	default:
		op.Kind = Rename
		w.names[to] = w.names[path]
		delete(w.names, path)
	}
	w.add(op)
	return nil
}

// acknowledged notes the numbers that the program prints.
func (w *watcher) acknowledged(text []byte) error {
	for line := range strings.Lines(string(text)) {
		last, err := strconv.ParseUint(strings.TrimSpace(line), 10, 64)
		if err != nil {
			return fmt.Errorf("the program says %q, and not which event is durable", line)
		}
		w.add(Op{Kind: Ack, Last: last})
	}
	return nil
}
