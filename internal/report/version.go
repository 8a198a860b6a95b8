package report

import (
	"runtime/debug"
	"sync"
)

// version may be set when the program is linked:
// -ldflags "-X steelyard/internal/report.version=1.2".
var version string

// Program returns the version of this program: what the linker was told, else
// the revision that it was built from, else "unknown".
var Program = sync.OnceValue(func() string {
	if version != "" {
		return version
	}
	info, ok := debug.ReadBuildInfo()
	if !ok {
		return "unknown"
	}
	revision, modified := "", ""
	for _, s := range info.Settings {
		switch s.Key {
		case "vcs.revision":
			revision = s.Value[:min(len(s.Value), 12)]
		case "vcs.modified":
			if s.Value == "true" {
				modified = "+"
			}
		}
	}
	switch {
	case revision != "":
		return revision + modified
	case info.Main.Version != "" && info.Main.Version != "(devel)":
		return info.Main.Version
	}
	return "unknown"
})
