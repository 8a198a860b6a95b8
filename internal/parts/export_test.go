package parts

import "sync"

// Find finds parts in English, for any build.
func Find(query string, limit int) []Entry { return plainFinder().Parts(query, nil, limit) }

var plainFinder = sync.OnceValue(func() *Finder { return NewFinder(nil) })
