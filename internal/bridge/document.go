package bridge

import (
	"sync"

	"github.com/goccy/go-json"

	"steelyard/data"
	"steelyard/internal/document"
	"steelyard/internal/geometry"
	"steelyard/internal/parts"
	"steelyard/internal/photograph"
)

// evaluate takes a document. It answers with its report: report.schema.json.
func (s *Session) evaluate(text string) string {
	e := s.evaluated(text)
	if s.answer == "" {
		out, err := e.Text()
		if err != nil {
			return s.problem("", "bridge.unreported", "why", err)
		}
		s.answer = out
	}
	return s.answer
}

// opened is the answer to open.
type opened struct {
	Document json.RawMessage    `json:"document"`
	Problems []document.Problem `json:"problems"`

	Photographs []photograph.Photograph `json:"photographs,omitempty"` // that the file has
}

// open takes the text of a file. It answers with the document in it, brought to
// this version and with every default filled in, or null; and with what is wrong
// or was put right: the opened of bridge.schema.json.
func (s *Session) open(text string) string {
	text, photographs, err := photograph.Unbundle(text)
	d, problems := document.Open([]byte(text))
	if err != nil && d != nil {
		problems = append(problems, document.Problem{Severity: document.SeverityWarning, Message: sentence(err)})
	}
	return s.openedAs(d, problems, photographs...)
}

func (s *Session) openedAs(d *document.Document, problems []document.Problem, photographs ...photograph.Photograph) string {
	out := opened{Problems: document.SayAll(problems, s.words)}
	if d != nil {
		text, err := document.WriteCompact(d)
		if err != nil {
			return s.problem("", "bridge.unwritten", "why", err)
		}
		out.Document, out.Photographs = text, photographs
	}
	return answer(out)
}

// englishWords takes nothing. It answers with the English labels of all keys: the
// words of bridge.schema.json.
func englishWords() string { return embedded("words/en.json") }

func embedded(path string) string {
	text, err := data.Files.ReadFile(path)
	if err != nil {
		return unwritten
	}
	return string(text)
}

// blank takes nothing. It answers with a document to start from, one build with
// the figures of an unsprung travel bike and no parts: document.schema.json.
func (s *Session) blank() string {
	d := &document.Document{
		Title: s.words.Label("blank.title"),
		Show:  document.Show{Mass: "kg", Length: "mm", Compare: []string{"b1"}},
		Builds: []document.Build{{
			ID: "b1", Name: s.words.Label("blank.build"),
			Frame: document.Frame{
				Stack: 610, Reach: 400, HeadTube: 150, HeadAngle: 70.5, SeatTube: 500, SeatAngle: 73,
				Chainstay: 455, BBDrop: 65,
			},
			Fork:    document.Fork{Length: 440, Offset: 50},
			Wheels:  document.Wheels{Front: document.Wheel{BeadSeat: 622, Tyre: 50}, Rear: document.Wheel{BeadSeat: 622, Tyre: 50}},
			Cockpit: document.Cockpit{Spacers: 25, Stem: 80, StemAngle: 6, BarWidth: 680, BarRise: 15, BarBack: 50},
			Saddle:  document.Saddle{Height: 740, Setback: 10},
			Cranks:  document.Cranks{Length: 170, Width: 150},
		}},
	}
	text, err := document.WriteCompact(d)
	if err != nil {
		return s.problem("", "bridge.unwritten", "why", err)
	}
	return string(text)
}

// catalogue takes nothing. It answers with the list of parts to choose from, called
// in the language of the session: catalogue.schema.json.
func (s *Session) catalogue() string {
	if s.words == nil {
		return englishCatalogue()
	}
	list := make([]parts.Entry, len(parts.Catalogue()))
	for i := range list {
		list[i] = *parts.Catalogue()[i].In(s.words)
	}
	return answer(list)
}

var englishCatalogue = sync.OnceValue(func() string { return answer(parts.Catalogue()) })

// station is a place that a part can sit at.
type station struct {
	Name string `json:"name"`
	Pair bool   `json:"pair"` // on both sides: a part may sit there twice, a bag cannot hang there
}

// stations takes nothing. It answers with the stations, rear to front: a list of
// the station of catalogue.schema.json.
func stations() string {
	list := make([]station, len(geometry.StationNames))
	for i, name := range geometry.StationNames {
		list[i] = station{name, geometry.Pair(name)}
	}
	return answer(list)
}

// kind is a kind of part with its group.
type kind struct {
	ID    string `json:"id"`
	Group string `json:"group"`
}

// kinds takes nothing. It answers with the kinds of parts and their groups, in
// order: a list of the kind of catalogue.schema.json.
func kinds() string {
	list := make([]kind, len(document.Kinds))
	for i, k := range document.Kinds {
		list[i] = kind{k.ID, k.Group}
	}
	return answer(list)
}

// encodeLink takes a document. It answers with the document packed for the part
// of an address after the #, behind what it is called, plain text.
func (s *Session) encodeLink(text string) string {
	d, problems := document.Open([]byte(text))
	if d == nil {
		return s.refusal(problems)
	}
	for i := range d.Builds {
		d.Builds[i].Photograph = "" // it stays where it is kept
	}
	compact, err := document.WriteCompact(d)
	if err != nil {
		return s.problem("", "bridge.unwritten", "why", err)
	}
	link, err := document.EncodeLink(compact)
	if err != nil {
		return s.failed(problemOf("", err))
	}
	return document.CallLink(link, d)
}

// decodeLink takes the part of an address after the #. It answers like open: the
// opened of bridge.schema.json.
func (s *Session) decodeLink(fragment string) string {
	text, err := document.DecodeLink(fragment)
	if err != nil {
		return s.openedAs(nil, []document.Problem{{Severity: document.SeverityError, Message: sentence(err)}})
	}
	d, problems := document.Open(text)
	return s.openedAs(d, problems)
}
