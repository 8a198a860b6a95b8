package parts

import (
	"sync"

	"steelyard/internal/document"
)

// Find finds parts in English, for any build.
func Find(query string, limit int) []Entry { return plainFinder().Parts(query, nil, limit) }

var plainFinder = sync.OnceValue(func() *Finder { return NewFinder(nil) })

// Parts is Find. Of entries that the query names about equally well, those that
// fit the build come first; nil is no build.
func (f *Finder) Parts(query string, on *document.Build, limit int) []Entry {
	return pick(Catalogue(), seek(f.parts, searched(query), f.fit(on)), limit)
}

// Goods is Find among the goods to take along.
func (f *Finder) Goods(query string, limit int) []GoodEntry {
	return pick(Goods(), seek(f.goods, searched(query), nil), limit)
}

// Bags is Find among the bags to pack.
func (f *Finder) Bags(query string, limit int) []BagEntry {
	return pick(Bags(), seek(f.bags, searched(query), nil), limit)
}
