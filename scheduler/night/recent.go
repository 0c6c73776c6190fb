package night

// Recent is what two people had together on nights before this one, in thousandths of a game on the last of them:
// games of nights longer ago count for less.
type Recent struct {
	A, B                Player
	Partners, Opponents int
}

// LastNight is how much a game of the last night counts in a [Recent]; of the night before it, half as much.
const LastNight = 1000

// WerePartners tells whether the two were partners on the last night, or as good as that.
func (r Recent) WerePartners() bool { return r.Partners >= LastNight }
