package session

// DoIn does a command in a copy of the desk's log, for an action that the log itself cannot take. A copy
// that holds more than the desk knows of is left as it is: the action turned out to be saved.
func (d *Desk) DoIn(copied Log, c Command) error {
	d.writing.Lock()
	defer d.writing.Unlock()
	there, err := NewDesk(copied, d.Now, d.newID)
	if err != nil || there.Ledger().Last() > d.Ledger().Last() {
		return err
	}
	_, err = there.Do(c)
	return err
}
