package rotation

import "club/quadrille/session/roster"

// Entries are the people of the rotation as a roster has them. When they come and go is not in it: the rounds tell.
func (d *Document) Entries() []roster.Entry {
	known := map[string]Person{}
	for _, p := range d.Roster {
		known[p.Name] = p
	}
	out := make([]roster.Entry, len(d.Players))
	for i, name := range d.Players {
		p := known[name]
		out[i] = roster.Entry{Line: i + 1, Name: name, Group: p.Group, Level: p.Level, KeepApart: p.KeepApart, NotPartner: p.NotPartner, Courts: p.Courts}
		for _, w := range p.PartnerWith {
			out[i].PartnerWith = append(out[i].PartnerWith, roster.Partner(w))
		}
	}
	return out
}
