package main

import (
	"archive/tar"
	"archive/zip"
	"bytes"
	"compress/gzip"
	"crypto/sha256"
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path"
	"path/filepath"
	"time"
)

// entry is one file of an archive.
type entry struct {
	name    string
	content []byte
	mode    fs.FileMode
}

// archive writes entries below a folder of an archive, all as old as the commit, and returns the line of
// its checksum as sha256sum writes and reads it. Windows opens zip files by itself, the others tar.gz.
func archive(file, below string, entries []entry, at time.Time, zipped bool) (string, error) {
	var out bytes.Buffer
	var err error
	if zipped {
		file += ".zip"
		err = writeZip(&out, below, entries, at)
	} else {
		file += ".tar.gz"
		err = writeTar(&out, below, entries, at)
	}
	if err != nil {
		return "", err
	}
	if err := os.WriteFile(file, out.Bytes(), 0o644); err != nil {
		return "", err
	}
	return fmt.Sprintf("%x  %s", sha256.Sum256(out.Bytes()), filepath.Base(file)), nil
}

func writeTar(out *bytes.Buffer, below string, entries []entry, at time.Time) error {
	packed := gzip.NewWriter(out)
	files := tar.NewWriter(packed)
	for _, e := range entries {
		head := &tar.Header{Name: path.Join(below, e.name), Mode: int64(e.mode), Size: int64(len(e.content)), ModTime: at, Format: tar.FormatPAX}
		if err := files.WriteHeader(head); err != nil {
			return err
		}
		if _, err := files.Write(e.content); err != nil {
			return err
		}
	}
	return errors.Join(files.Close(), packed.Close())
}

func writeZip(out *bytes.Buffer, below string, entries []entry, at time.Time) error {
	files := zip.NewWriter(out)
	for _, e := range entries {
		head := &zip.FileHeader{Name: path.Join(below, e.name), Method: zip.Deflate, Modified: at}
		head.SetMode(e.mode)
		w, err := files.CreateHeader(head)
		if err != nil {
			return err
		}
		if _, err := w.Write(e.content); err != nil {
			return err
		}
	}
	return files.Close()
}
