package pages

// freeList checks the list of free pages.
func (w *walk) freeList() {
	id := w.file.header.freeList
	if id == noFreeList {
		return
	}
	p, buf, err := w.file.read(id, w.take())
	defer w.give(buf)
	if err != nil {
		w.fault(id, "the list of free pages: %v", err)
		return
	}
	w.claim(id, uint64(len(p.data))/uint64(w.file.header.pageSize))
	if p.kind != kindFreeList {
		w.fault(id, "it is not the list of free pages")
		return
	}
	// A count that does not fit into the page's header stands in front of the list.
	list, count := p.data[pageHeader:], uint64(p.count)
	if count == 0xFFFF {
		count, list = order.Uint64(list), list[8:]
	}
	if count > uint64(len(list)/8) {
		w.fault(id, "the list of free pages claims %d, more than fit", count)
		return
	}
	for i := range count {
		w.release(id, order.Uint64(list[i*8:]))
	}
}

// release notes that a page is free, as the list on page list says.
func (w *walk) release(list, id uint64) {
	switch {
	case id < 2 || id >= w.file.header.pages:
		w.fault(list, "page %d is listed as free but lies outside of the file", id)
	case id >= uint64(len(w.state)): // cut off, which is told already
	case w.state[id] != unseen:
		w.fault(id, "it is listed as free twice or still used")
	default:
		w.state[id] = free
		w.survey.Free++
	}
}

// leftOver finds pages that are neither used nor free. After a fault there are bound to be some,
// below what could not be read.
func (w *walk) leftOver() {
	if len(w.survey.Faults) > 0 || w.file.header.freeList == noFreeList {
		return
	}
	for id, s := range w.state {
		if s == unseen {
			w.fault(uint64(id), "it is neither used nor free")
		}
	}
}
