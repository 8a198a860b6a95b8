package report

import (
	"steelyard/internal/mass"
	"steelyard/internal/parts"
)

// carrier is a parts.Carrier as a small number.
type carrier uint8

const (
	mainFrame carrier = iota
	swingarm
	rearWheel
	forkUpper
	forkLower
	frontWheel
	link
	numCarriers
)

var carrierKeys = [numCarriers]parts.Carrier{
	mainFrame: parts.MainFrame, swingarm: parts.Swingarm, rearWheel: parts.RearWheel, forkUpper: parts.ForkUpper,
	forkLower: parts.ForkLower, frontWheel: parts.FrontWheel, link: parts.Link,
}

func carrierOf(c parts.Carrier) (carrier, bool) {
	for i, k := range carrierKeys {
		if k == c {
			return carrier(i), true
		}
	}
	return 0, false
}

var kindIndex = func() map[string]uint8 {
	m := make(map[string]uint8, len(parts.Kinds))
	for _, k := range parts.Kinds {
		m[k.ID] = groupNumber(k.Group)
	}
	return m
}()

func groupNumber(group string) uint8 {
	for i, g := range parts.Groups {
		if g == group {
			return uint8(i)
		}
	}
	return uint8(len(parts.Groups) - 1)
}

// groupIndex is parts.GroupOf as an index of parts.Groups.
func groupIndex(kind string) uint8 {
	if i, ok := kindIndex[kind]; ok {
		return i
	}
	return groupNumber(parts.GroupOf(kind))
}

// share is how much of what a carrier holds counts for something.
type share [numCarriers]float64

// The shares that figures are made of. In the tally of unsprung mass the shock
// and links count by half, as the trade does: one end of them moves with the
// wheel, the other stays with the frame.
var (
	ofRearWheel  = share{rearWheel: 1}
	ofFrontWheel = share{frontWheel: 1}
	// What turns about the main pivot, by itself. The rear wheel does not: see
	// [Weighed.measure].
	ofSwing     = share{swingarm: 1, link: 0.5}
	ofRearEnd   = share{rearWheel: 1, swingarm: 1, link: 0.5}
	ofForkLower = share{frontWheel: 1, forkLower: 1}
)

// shares says, item by item, how much counts where.
type shares struct {
	tallyFront, tallyRear, sprung mass.Share
	swing                         mass.Share
	rearWheel, frontWheel         mass.Share
}

// newShares works out the shares of a build and writes each line's unsprung
// share. At a rigid end the tyre is the only spring: there the wheel alone is
// counted, whatever the carriers of the other parts.
func newShares(w *Weighed) shares {
	rear, front := ofRearWheel, ofFrontWheel
	if w.Bike.RearSprung {
		rear = ofRearEnd
	}
	if w.Bike.FrontSprung {
		front = ofForkLower
	}
	n := len(w.Items)
	all := make([]float64, 6*n)
	take := func() mass.Share {
		s := all[:n:n]
		all = all[n:]
		return s
	}
	s := shares{take(), take(), take(), take(), take(), take()}
	for i := range w.Lines {
		l := &w.Lines[i]
		if !l.OK {
			continue
		}
		c := l.carrier
		l.Unsprung = rear[c] + front[c]
		for j := l.First; j < l.End; j++ {
			s.tallyFront[j], s.tallyRear[j], s.sprung[j] = front[c], rear[c], 1-l.Unsprung
			s.swing[j] = ofSwing[c]
			s.rearWheel[j], s.frontWheel[j] = ofRearWheel[c], ofFrontWheel[c]
		}
	}
	return s
}
