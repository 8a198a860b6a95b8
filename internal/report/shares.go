package report

import (
	"steelyard/internal/document"
	"steelyard/internal/mass"
)

// carrier is a document.Carrier as a small number. Their order puts together what
// figures are made of.
type carrier uint8

const (
	frontWheel carrier = iota
	forkLower
	rearWheel
	swingarm
	link
	forkUpper
	mainFrame
	numCarriers
)

var carrierKeys = [numCarriers]document.Carrier{
	mainFrame: document.MainFrame, swingarm: document.Swingarm, rearWheel: document.RearWheel, forkUpper: document.ForkUpper,
	forkLower: document.ForkLower, frontWheel: document.FrontWheel, link: document.Link,
}

func carrierOf(c document.Carrier) (carrier, bool) {
	for i, k := range carrierKeys {
		if k == c {
			return carrier(i), true
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

var bagsGroup, carriedGroup = groupNumber("bags"), groupNumber("carried")

// share is how much of what a carrier holds counts for something.
type share [numCarriers]float64

// The shares that figures are made of. In the tally of unsprung mass the shock
// and links count by half, as the trade does: one end of them moves with the
// wheel, the other stays with the frame.
var (
	ofFrontWheel = share{frontWheel: 1}
	ofFrontEnd   = share{frontWheel: 1, forkLower: 1}
	ofRearWheel  = share{rearWheel: 1}
	ofRearEnd    = share{rearWheel: 1, swingarm: 1, link: 0.5}
	// What turns about the main pivot. The rear wheel does not: see
	// [Weighed.measure].
	ofSwing = share{swingarm: 1, link: 0.5}
)

// spans says which items of a build lie on which carriers, and how much of them
// counts where.
type spans struct {
	end                   [numCarriers]int // of each carrier's items
	tallyFront, tallyRear mass.Share       // of all items
	sprung                mass.Share
	rearTally, rearSwing  mass.Share // of the items from rear wheel to link
	rearRolls             mass.Share
}

// from returns the index of the first item of a carrier.
func (s *spans) from(c carrier) int {
	if c == 0 {
		return 0
	}
	return s.end[c-1]
}

// on returns the items on the carriers from first to last.
func (w *Weighed) on(first, last carrier) []mass.Item {
	return w.Items[w.spans.from(first):w.spans.end[last]]
}

// share works out how much of each item counts where, and each line's unsprung
// share. At a rigid end the tyre is the only spring: there the wheel alone is
// counted, whatever the carriers of the other parts.
func (w *Weighed) share() {
	rear, front := ofRearWheel, ofFrontWheel
	if w.Bike.RearSprung {
		rear = ofRearEnd
	}
	if w.Bike.FrontSprung {
		front = ofFrontEnd
	}
	for i := range w.Lines {
		if l := &w.Lines[i]; l.OK || l.Off {
			l.Unsprung = rear[l.carrier] + front[l.carrier]
		}
	}
	n, s := len(w.Items), &w.spans
	lo, hi := s.from(rearWheel), s.end[link]
	all := make([]float64, 3*n+2*(hi-lo))
	take := func(n int) mass.Share {
		t := all[:n:n]
		all = all[n:]
		return t
	}
	s.tallyFront, s.tallyRear, s.sprung = take(n), take(n), take(n)
	s.rearSwing, s.rearRolls = take(hi-lo), take(hi-lo)
	s.rearTally = s.tallyRear[lo:hi]
	for c := range numCarriers {
		for i := s.from(c); i < s.end[c]; i++ {
			s.tallyFront[i], s.tallyRear[i], s.sprung[i] = front[c], rear[c], 1-front[c]-rear[c]
			if lo <= i && i < hi {
				s.rearSwing[i-lo], s.rearRolls[i-lo] = ofSwing[c], ofRearWheel[c]
			}
		}
	}
}
