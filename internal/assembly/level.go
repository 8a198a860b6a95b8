package assembly

import (
	"slices"

	"steelyard/internal/document"
	"steelyard/internal/mass"
)

// Level is a document.State as a number.
type Level uint8

const (
	Bare Level = iota
	Ready
	Loaded
	Ridden
	numLevels
)

// LevelOf returns the level of a state; an unknown state is ready to ride.
func LevelOf(s document.State) Level {
	if i := slices.Index(document.States, s); i >= 0 {
		return Level(i)
	}
	return Ready
}

func (l Level) State() document.State { return document.States[l] }

// take brings the bike into a state, with a share of its supplies left. Lines
// that are not on the bike then have no items, and supplies keep a share of
// theirs. All items, at full supplies, stay in Whole.
func (w *Assembly) take(to Level, left float64) {
	w.Whole = w.Items
	w.Level, w.Left = to, left
	change := false
	for i := range w.Lines {
		l := &w.Lines[i]
		change = change || l.OK && (l.Level > to || l.Supply != Lasting && left < 1)
	}
	if !change {
		return
	}
	w.Items = make([]mass.Item, 0, len(w.Whole))
	from := make([]int32, len(w.Whole)) // the line of each item
	ends := w.Spans.end
	for i := range w.Lines {
		for j := w.Lines[i].First; j < w.Lines[i].End; j++ {
			from[j] = int32(i)
		}
	}
	first, end := -1, -1
	c := Carrier(0)
	for j, i := range from {
		for j >= ends[c] {
			w.Spans.end[c] = len(w.Items)
			c++
		}
		l := &w.Lines[i]
		if j == l.WholeFirst {
			first = len(w.Items)
		}
		if it := w.Whole[j]; l.Level <= to {
			if l.Supply != Lasting {
				it.Mass *= left
				it.MassU *= left
			}
			if l.Supply == Lasting || left > 0 {
				w.Items = append(w.Items, it)
			}
		}
		if end = len(w.Items); j == l.WholeEnd-1 {
			l.First, l.End = first, end
		}
	}
	for ; c < NumCarriers; c++ {
		w.Spans.end[c] = len(w.Items)
	}
	for i := range w.Lines {
		l := &w.Lines[i]
		if l.WholeFirst == l.WholeEnd || l.Supply != Lasting && left == 0 {
			l.First, l.End = 0, 0
		}
		switch {
		case !l.OK:
		case l.Level > to:
			l.OK, l.Off = false, true
			l.First, l.End = 0, 0
			w.Count--
			w.Off++
		case l.Supply != Lasting && left < 1:
			l.Mass *= left
			l.MassU *= left
			l.Pieces *= left
		}
	}
}

// Highest is the fullest state that there is of the bike.
func (w *Assembly) Highest() Level {
	switch {
	case w.Cargo == nil:
		return Ready
	case w.Cargo.Body == nil:
		return Loaded
	}
	return Ridden
}

// At returns the items of the bike in a state, with a share of its supplies left.
// The caller must not change them.
func (w *Assembly) At(to Level, left float64) []mass.Item {
	if to == w.Level && (left == w.Left || !w.UsesUp(to)) {
		return w.Items
	}
	is := state{to, left, w.Renamed}
	if w.last.items != nil && w.last.state == is {
		return w.last.items
	}
	items := make([]mass.Item, 0, len(w.Whole))
	for i := range w.Lines {
		l := &w.Lines[i]
		if l.Level > to || !l.OK && !l.Off || l.Supply != Lasting && left == 0 {
			continue
		}
		for _, it := range w.Whole[l.WholeFirst:l.WholeEnd] {
			if l.Supply != Lasting {
				it.Mass *= left
				it.MassU *= left
			}
			items = append(items, it)
		}
	}
	w.last.state, w.last.items = is, items
	return items
}

// state is what items of another state than the assembly's own are told apart by.
type state struct {
	to      Level
	left    float64
	renamed int
}

// UsesUp reports whether anything on the bike in a state is used up.
func (w *Assembly) UsesUp(to Level) bool {
	return slices.ContainsFunc(w.Lines, func(l Line) bool {
		return l.Supply != Lasting && l.Level <= to && l.WholeEnd > l.WholeFirst
	})
}
