package parts

import "steelyard/internal/words"

// In returns the entry with its name and note in a language, where the language
// has them.
func (e *Entry) In(w *words.Words) *Entry {
	spoken := *e
	spoken.Name = w.Or("entry."+e.ID, e.Name)
	if e.Note != "" {
		spoken.Note = w.Or("entry."+e.ID+".note", e.Note)
	}
	return &spoken
}

// In returns the good with its name in a language, likewise.
func (e *GoodEntry) In(w *words.Words) *GoodEntry {
	spoken := *e
	spoken.Name = w.Or("goods."+e.ID, e.Name)
	return &spoken
}

// In returns the bag with its name in a language, likewise.
func (e *BagEntry) In(w *words.Words) *BagEntry {
	spoken := *e
	spoken.Name = w.Or("bags."+e.ID, e.Name)
	return &spoken
}
