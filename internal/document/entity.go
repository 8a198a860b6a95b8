package document

import "steelyard/internal/words"

// entity is what a message is about: something that has an id and a name.
type entity struct {
	hold     kind
	id, name string
}

// title is what an entity is called in a message: its sort, and its name or else
// its id in quotes; empty for no entity.
func (t entity) title() words.Message {
	if t.hold == kindNothing {
		return words.Message{}
	}
	return titled(t.hold, words.Plain(label(t.name, t.id)))
}

func titled(h kind, name words.Message) words.Message {
	return words.Tell("document.title."+entityInfos[h].name, "name", name)
}

// put writes the id of an entity into a problem.
func (t entity) put(p *Problem) {
	if at := p.id(t.hold); at != nil {
		*at = t.id
	}
}

// id is where a problem holds the id of an entity of that sort; nil for one that
// has none.
func (p *Problem) id(h kind) *string {
	switch h {
	case kindBuild:
		return &p.Build
	case kindPart:
		return &p.Part
	case kindRider:
		return &p.Rider
	case kindLoad:
		return &p.Load
	case kindBag:
		return &p.Bag
	case kindGood:
		return &p.Good
	case kindWeighIn:
		return &p.WeighIn
	case kindDay:
		return &p.Day
	}
	return nil
}

// placed puts the entity that a message is about in front of it, and what that
// belongs to, both as titles; either may be empty.
func placed(thing, of, message words.Message) words.Message {
	switch {
	case !thing.IsZero() && !of.IsZero():
		return words.Tell("document.placed.of", "what", words.Sentence{Of: thing}, "of", of, "message", message)
	case !thing.IsZero():
		return words.Tell("document.placed", "what", words.Sentence{Of: thing}, "message", message)
	case !of.IsZero():
		return words.Tell("document.placed", "what", words.Sentence{Of: of}, "message", message)
	}
	return message
}

// label is what an entity is called in a message.
func label(name, id string) string {
	if words.Blank(name) {
		return words.Shorten(id)
	}
	return words.Shorten(name)
}
