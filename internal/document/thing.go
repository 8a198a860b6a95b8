package document

import (
	"fmt"

	"steelyard/internal/words"
)

// thing is what a message is about: something that has an id and a name.
type thing struct {
	hold     hold
	id, name string
}

// title is what a thing is called in a message: its sort, and its name or else
// its id in quotes.
func (t thing) title() string {
	if t.hold == holdNothing {
		return ""
	}
	return titled(t.hold, label(t.name, t.id))
}

func titled(h hold, name string) string { return whats[h].one + " “" + name + "”" }

// put writes the id of a thing into a problem.
func (t thing) put(p *Problem) {
	if at := p.id(t.hold); at != nil {
		*at = t.id
	}
}

// id is where a problem holds the id of a thing of that sort; nil for one that
// has none.
func (p *Problem) id(h hold) *string {
	switch h {
	case holdBuild:
		return &p.Build
	case holdPart:
		return &p.Part
	case holdRider:
		return &p.Rider
	case holdLoad:
		return &p.Load
	case holdBag:
		return &p.Bag
	case holdGood:
		return &p.Good
	case holdWeighIn:
		return &p.WeighIn
	}
	return nil
}

// placed puts in front of a message the thing that it is about, and what that
// is of, both as titles; either may be empty.
func placed(thing, of, message string) string {
	switch {
	case thing != "" && of != "":
		return fmt.Sprintf("%s of %s: %s", capital(thing), of, message)
	case thing != "":
		return fmt.Sprintf("%s: %s", capital(thing), message)
	case of != "":
		return fmt.Sprintf("%s: %s", capital(of), message)
	}
	return message
}

// capital begins a title, which begins with a plain letter, as a sentence does.
func capital(s string) string { return string(s[0]-'a'+'A') + s[1:] }

// label is what a thing is called in a message.
func label(name, id string) string {
	if words.Blank(name) {
		return words.Shorten(id)
	}
	return words.Shorten(name)
}
