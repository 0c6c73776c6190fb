package line

// Both joins two texts in so many cells so that neither vanishes behind the other: what is longer than half of the room gives
// way, and takes what the other one leaves.
func Both(a, and, b string, room int) string {
	room -= Width(and)
	if Width(a)+Width(b) > room {
		half := max(0, room/2)
		a, b = Cut(a, max(half, room-Width(b))), Cut(b, max(room-half, room-Width(a)))
	}
	return a + and + b
}
