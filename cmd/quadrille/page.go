package main

import (
	"fmt"
	"reflect"
	"strings"

	"club/quadrille/session"
)

// page writes the help about file forms.
type page struct {
	out   strings.Builder
	parts map[string][][2]string
	told  map[string]bool // shapes that stand on the page already
}

func (p *page) paragraph(text string) { p.out.WriteString(wrap(text, 0) + "\n\n") }

func (p *page) blank() { p.out.WriteByte('\n') }

// line tells of one column or field.
func (p *page) line(name, kind, text string) {
	const names, kinds = 19, 23
	head := "  " + fit(name, names)
	if kind != "" {
		head += fit(kind, kinds)
	}
	if width(name) >= names || width(kind) >= kinds {
		head = "  " + strings.TrimSpace(name+"  "+kind) + "\n" + strings.Repeat(" ", width(head))
	}
	p.out.WriteString(strings.TrimRight(head+wrapFrom(text, width(lastLine(head))), " ") + "\n")
}

// shapes tells of an object and of all that it holds, each once.
func (p *page) shapes(types ...reflect.Type) {
	for _, s := range shapesOf(types...) {
		if p.told[s.name] {
			continue
		}
		p.told[s.name] = true
		p.out.WriteString(s.name + s.base())
		p.blank()
		p.members(s.name, s.members)
		p.blank()
	}
}

// base names the shape that s has all fields of, if there is one.
func (s shape) base() string {
	if s.based == "" {
		return ""
	}
	return ": all of " + s.based + ", and"
}

// event tells of a kind of event, and of the objects in its payload.
func (p *page) event(l session.Layout) {
	s, inner := shapeOf(l.Payload)
	fmt.Fprintf(&p.out, "%s, version %d%s\n", l.Kind, l.Version, s.base())
	p.members(l.Kind, s.members)
	p.blank()
	p.shapes(inner...)
}

func (p *page) members(part string, members []member) {
	texts := map[string]string{}
	for _, d := range p.parts[part] {
		texts[d[0]] = d[1]
	}
	for _, m := range members {
		name := m.name
		if m.optional {
			name += "?"
		}
		p.line(name, m.kind, texts[m.name])
	}
}

// wrapFrom breaks a sentence into lines that fit behind an indent, which the first has already.
func wrapFrom(text string, indent int) string {
	return strings.TrimLeft(flow(strings.Fields(text), indent, 1), " ")
}

func lastLine(text string) string { return text[strings.LastIndexByte(text, '\n')+1:] }
