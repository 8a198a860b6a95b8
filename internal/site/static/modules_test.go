package static

import (
	"os"
	"path/filepath"
	"testing"
)

// Modules that a checkout has only a link to are left as they are when its lock
// file asks for others.
func TestModulesLeavesLinkedOnesAlone(t *testing.T) {
	root, other := t.TempDir(), t.TempDir()
	web := filepath.Join(root, "web")
	kept := filepath.Join(other, "kept.js")
	for path, text := range map[string]string{
		kept:                                    "kept",
		filepath.Join(other, markName):          "of another lock file",
		filepath.Join(web, "package.json"):      `{"name":"w","version":"1.0.0"}`,
		filepath.Join(web, "package-lock.json"): `{"name":"w","version":"1.0.0","lockfileVersion":3,"packages":{"":{"name":"w","version":"1.0.0"}}}`,
	} {
		if err := os.MkdirAll(filepath.Dir(path), 0o755); err != nil {
			t.Fatal(err)
		}
		if err := os.WriteFile(path, []byte(text), 0o644); err != nil {
			t.Fatal(err)
		}
	}
	modules := filepath.Join(web, "node_modules")
	if err := os.Symlink(other, modules); err != nil {
		t.Fatal(err)
	}
	if err := Modules(t.Context(), root); err != nil {
		t.Fatal(err)
	}
	if _, err := os.Stat(kept); err != nil {
		t.Error(err)
	}
	if info, err := os.Lstat(modules); err != nil || !info.IsDir() {
		t.Errorf("node_modules is no folder of its own: %v, %v", info, err)
	}
	if _, err := os.Stat(filepath.Join(modules, markName)); err != nil {
		t.Error(err)
	}
}
