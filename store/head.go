package store

import (
	"bytes"
	"crypto/rand"
	"encoding/binary"
	"encoding/hex"
	"fmt"
	"hash/crc32"
	"time"
)

// Schema is the version of the file format that this program writes.
const Schema = 1

// Head is what a file says about itself. It is written once, when the file is made.
type Head struct {
	Schema    uint16    // version of the file format
	UUID      UUID      // identity of the club's log, kept by copies and rescues
	Created   time.Time // UTC, to the millisecond
	CreatedBy string    // version of the program that made the file, "" if it did not say
}

// UUID is a random identity (RFC 9562, version 4).
type UUID [16]byte

// String writes u in the usual groups, 8-4-4-4-12 hexadecimal digits.
func (u UUID) String() string {
	h := hex.EncodeToString(u[:])
	return h[:8] + "-" + h[8:12] + "-" + h[12:16] + "-" + h[16:20] + "-" + h[20:]
}

func newUUID() UUID {
	var u UUID
	rand.Read(u[:]) // never fails, as its documentation says
	u[6] = u[6]&0x0f | 0x40
	u[8] = u[8]&0x3f | 0x80
	return u
}

// The head is kept under one key of the bucket meta: a mark, the schema (2 bytes), the identity
// (16), the time in milliseconds since 1970 UTC (8), the length of the version of the program (1)
// and that version, and CRC-32C of all before it (4). The mark, the schema and the checksum keep
// their places in every schema to come.
var (
	headKey  = []byte("head")
	headMark = []byte("quadrille club\n")
)

const (
	headFixed = 2 + 16 + 8 + 1
	maxMaker  = 64
)

func newHead(createdBy string) Head {
	if len(createdBy) > maxMaker {
		createdBy = createdBy[:maxMaker]
	}
	return Head{
		Schema:    Schema,
		UUID:      newUUID(),
		Created:   time.Now().UTC().Truncate(time.Millisecond),
		CreatedBy: createdBy,
	}
}

// seed is what the first record has for the checksum of the record before: it ties the chain to
// this file.
func (h Head) seed() uint32 { return crc32.Checksum(h.UUID[:], castagnoli) }

func (h Head) encode() []byte {
	b := bytes.Clone(headMark)
	b = binary.BigEndian.AppendUint16(b, h.Schema)
	b = append(b, h.UUID[:]...)
	b = binary.BigEndian.AppendUint64(b, uint64(h.Created.UnixMilli()))
	b = append(b, byte(len(h.CreatedBy)))
	b = append(b, h.CreatedBy...)
	return binary.BigEndian.AppendUint32(b, crc32.Checksum(b, castagnoli))
}

// decodeHead reads what encode wrote. The error is a [*NewerError] for a sound head of a schema
// that this program does not know.
func decodeHead(value []byte) (Head, error) {
	mark := len(headMark)
	if len(value) < mark+2+sumSize || !bytes.HasPrefix(value, headMark) {
		return Head{}, fmt.Errorf("the head of the file is damaged")
	}
	body := value[:len(value)-sumSize]
	if binary.BigEndian.Uint32(value[len(body):]) != crc32.Checksum(body, castagnoli) {
		return Head{}, fmt.Errorf("the head of the file is damaged")
	}
	h := Head{Schema: binary.BigEndian.Uint16(body[mark:])}
	if h.Schema > Schema {
		return h, &NewerError{What: "file format", Found: int(h.Schema), Known: Schema}
	}
	if len(body) < mark+headFixed || len(body) != mark+headFixed+int(body[mark+headFixed-1]) {
		return Head{}, fmt.Errorf("the head of the file is damaged")
	}
	body = body[mark+2:]
	copy(h.UUID[:], body)
	h.Created = time.UnixMilli(int64(binary.BigEndian.Uint64(body[16:]))).UTC()
	h.CreatedBy = string(body[25:])
	return h, nil
}
