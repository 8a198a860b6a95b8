package bridge

import (
	"steelyard/internal/document"
	"steelyard/internal/parts"
)

// demo takes nothing. It answers with the demo document in the language of the
// session: document.schema.json. What is called like the entry that it came from
// has the entry's name, the rest has words of its own.
func (s *Session) demo() string {
	english := embedded("demo/travel.json")
	if s.words == nil {
		return english
	}
	d, problems := document.Open([]byte(english))
	if d == nil {
		return s.refusal(problems)
	}
	s.translate(d)
	text, err := document.WriteCompact(d)
	if err != nil {
		return s.problem("", "bridge.unwritten", "why", err)
	}
	return string(text)
}

// translate puts the demo's texts into the language of the session.
func (s *Session) translate(d *document.Document) {
	say := func(text *string, key string) {
		if *text != "" {
			*text = s.words.Or("demo."+key, *text)
		}
	}
	say(&d.Title, "title")
	say(&d.Notes, "notes")
	for i := range d.Builds {
		b := &d.Builds[i]
		at := "builds." + b.ID
		say(&b.Name, at)
		say(&b.Notes, at+".notes")
		for j := range b.Parts {
			p := &b.Parts[j]
			of := at + ".parts." + p.ID
			if e := parts.EntryByID(p.Catalogue); e != nil {
				spoken := e.In(s.words)
				p.Name, p.Note = follow(p.Name, e.Name, spoken.Name), follow(p.Note, e.Note, spoken.Note)
			}
			say(&p.Name, of)
			say(&p.Note, of+".note")
		}
	}
	for i := range d.Riders {
		say(&d.Riders[i].Name, "riders."+d.Riders[i].ID)
	}
	for i := range d.Days {
		say(&d.Days[i].Name, "days."+d.Days[i].ID)
	}
	bags, goods := make(map[string]string), make(map[string]string)
	for i := range parts.Bags() {
		e := &parts.Bags()[i]
		bags[e.Name] = e.In(s.words).Name
	}
	for i := range parts.Goods() {
		e := &parts.Goods()[i]
		goods[e.Name] = e.In(s.words).Name
	}
	for i := range d.Loads {
		l := &d.Loads[i]
		at := "loads." + l.ID
		say(&l.Name, at)
		say(&l.Notes, at+".notes")
		for j := range l.Bags {
			b := &l.Bags[j]
			if spoken, ok := bags[b.Name]; ok {
				b.Name = spoken
			}
			say(&b.Name, at+".bags."+b.ID)
		}
		for j := range l.Goods {
			g := &l.Goods[j]
			if spoken, ok := goods[g.Name]; ok {
				g.Name = spoken
			}
			say(&g.Name, at+".goods."+g.ID)
		}
	}
	for i := range d.WeighIns {
		w := &d.WeighIns[i]
		say(&w.Name, "weigh_ins."+w.ID)
		for j := range w.Scales {
			say(&w.Scales[j].Name, "weigh_ins."+w.ID+".scales."+w.Scales[j].ID)
		}
	}
}

// follow returns the other text where a text is the one.
func follow(text, one, other string) string {
	if text == one {
		return other
	}
	return text
}
