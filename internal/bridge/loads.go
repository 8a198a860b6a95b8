package bridge

import (
	"sync"

	"steelyard/internal/document"
	"steelyard/internal/parts"
)

// templates are what there is to take along, and to pack it in.
type templates struct {
	Goods []parts.GoodEntry `json:"goods"`
	Bags  []parts.BagEntry  `json:"bags"`
}

// goods takes nothing. It answers with the goods and bags to choose from, called in
// the language of the session: the templates of catalogue.schema.json.
func (s *Session) goods() string {
	if s.words == nil {
		return englishGoods()
	}
	t := templates{make([]parts.GoodEntry, len(parts.Goods())), make([]parts.BagEntry, len(parts.Bags()))}
	for i := range t.Goods {
		t.Goods[i] = *parts.Goods()[i].In(s.words)
	}
	for i := range t.Bags {
		t.Bags[i] = *parts.Bags()[i].In(s.words)
	}
	return answer(t)
}

var englishGoods = sync.OnceValue(func() string { return answer(templates{parts.Goods(), parts.Bags()}) })

// copyLoad takes a document, the id of a load and a name. It answers like open
// (opened of bridge.schema.json), with a copy of the load under that name at the
// end: its bags and goods keep their ids, by which two loads are compared.
func (s *Session) copyLoad(args ...string) string {
	d, problems := document.Open([]byte(argument(args, 0)))
	if d == nil {
		return s.refusal(problems)
	}
	id := argument(args, 1)
	if d.CopyLoad(id, argument(args, 2)) == nil {
		return s.failed(noLoad(id))
	}
	return s.openedAs(d, problems)
}
