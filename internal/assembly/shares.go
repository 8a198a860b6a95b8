package assembly

import (
	"steelyard/internal/document"
	"steelyard/internal/mass"
)

// Carrier is a document.Carrier as a small number, ordered so that each figure is
// made of neighbours.
type Carrier uint8

const (
	FrontWheel Carrier = iota
	ForkLower
	RearWheel
	Swingarm
	Link
	ForkUpper
	MainFrame
	NumCarriers
)

var CarrierKeys = [NumCarriers]document.Carrier{
	MainFrame: document.MainFrame, Swingarm: document.Swingarm, RearWheel: document.RearWheel, ForkUpper: document.ForkUpper,
	ForkLower: document.ForkLower, FrontWheel: document.FrontWheel, Link: document.Link,
}

func carrierOf(c document.Carrier) (Carrier, bool) {
	for i, k := range CarrierKeys {
		if k == c {
			return Carrier(i), true
		}
	}
	return 0, false
}

var kindIndex = func() map[string]uint8 {
	m := make(map[string]uint8, len(document.Kinds))
	for _, k := range document.Kinds {
		m[k.ID] = groupNumber(k.Group)
	}
	return m
}()

func groupNumber(group string) uint8 {
	for i, g := range document.Groups {
		if g == group {
			return uint8(i)
		}
	}
	return uint8(len(document.Groups) - 1)
}

// groupIndex is document.GroupOf as an index of document.Groups.
func groupIndex(kind string) uint8 {
	if i, ok := kindIndex[kind]; ok {
		return i
	}
	return groupNumber(document.GroupOf(kind))
}

var BagsGroup, CarriedGroup = groupNumber("bags"), groupNumber("carried")

// share is how much of what a carrier holds counts for something.
type share [NumCarriers]float64

// The shares that figures are made of. In the tally of unsprung mass the shock
// and links count by half, as the trade does: one end of them moves with the
// wheel, the other stays with the frame.
var (
	ofFrontWheel = share{FrontWheel: 1}
	ofFrontEnd   = share{FrontWheel: 1, ForkLower: 1}
	ofRearWheel  = share{RearWheel: 1}
	ofRearEnd    = share{RearWheel: 1, Swingarm: 1, Link: 0.5}
	// What turns about the main pivot. The rear wheel does not: see
	// the computation of figures in package report.
	ofSwing = share{Swingarm: 1, Link: 0.5}
)

// Spans says which items of a build lie on which carriers, and how much of them
// counts where.
type Spans struct {
	end                   [NumCarriers]int // of each carrier's items
	TallyFront, TallyRear mass.Share       // of all items
	Sprung                mass.Share
	RearTally, RearSwing  mass.Share // of the items from rear wheel to link
	RearRolls             mass.Share
}

// from returns the index of the first item of a carrier.
func (s *Spans) from(c Carrier) int {
	if c == 0 {
		return 0
	}
	return s.end[c-1]
}

// On returns the items on the carriers from first to last.
func (w *Assembly) On(first, last Carrier) []mass.Item {
	return w.Items[w.Spans.from(first):w.Spans.end[last]]
}

// share works out how much of each item counts where, and each line's unsprung
// share. At a rigid end the tyre is the only spring: there the wheel alone is
// counted, whatever the carriers of the other parts.
func (w *Assembly) share() {
	rear, front := ofRearWheel, ofFrontWheel
	if w.Bike.RearSprung {
		rear = ofRearEnd
	}
	if w.Bike.FrontSprung {
		front = ofFrontEnd
	}
	for i := range w.Lines {
		if l := &w.Lines[i]; l.OK || l.Off {
			l.Unsprung = rear[l.Carrier] + front[l.Carrier]
		}
	}
	n, s := len(w.Items), &w.Spans
	lo, hi := s.from(RearWheel), s.end[Link]
	all := make([]float64, 3*n+2*(hi-lo))
	take := func(n int) mass.Share {
		t := all[:n:n]
		all = all[n:]
		return t
	}
	s.TallyFront, s.TallyRear, s.Sprung = take(n), take(n), take(n)
	s.RearSwing, s.RearRolls = take(hi-lo), take(hi-lo)
	s.RearTally = s.TallyRear[lo:hi]
	for c := range NumCarriers {
		for i := s.from(c); i < s.end[c]; i++ {
			s.TallyFront[i], s.TallyRear[i], s.Sprung[i] = front[c], rear[c], 1-front[c]-rear[c]
			if lo <= i && i < hi {
				s.RearSwing[i-lo], s.RearRolls[i-lo] = ofSwing[c], ofRearWheel[c]
			}
		}
	}
}

// Span returns where in Items those of a carrier begin and end.
func (w *Assembly) Span(c Carrier) (first, end int) { return w.Spans.from(c), w.Spans.end[c] }
