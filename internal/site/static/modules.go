package static

import (
	"bytes"
	"context"
	"crypto/sha256"
	"encoding/hex"
	"errors"
	"fmt"
	"io/fs"
	"os"
	"os/exec"
	"path/filepath"
)

// markName is the file among the modules that says which lock file they are of.
const markName = ".steelyard-lock"

// Modules runs `npm ci` in root's web folder when the modules there are not
// those of its lock file: after a checkout, and after the lock file changed.
func Modules(ctx context.Context, root string) error {
	web := filepath.Join(root, "web")
	lock, err := os.ReadFile(filepath.Join(web, "package-lock.json"))
	if errors.Is(err, fs.ErrNotExist) {
		return nil // a page without dependencies
	}
	if err != nil {
		return err
	}
	sum := sha256.Sum256(lock)
	stamp := []byte(hex.EncodeToString(sum[:]))
	mark := filepath.Join(web, "node_modules", markName)
	if old, err := os.ReadFile(mark); err == nil && bytes.Equal(old, stamp) {
		return nil
	}
	// Modules that are only linked to from here belong to another checkout: npm
	// would empty them.
	modules := filepath.Dir(mark)
	if info, err := os.Lstat(modules); err == nil && info.Mode()&fs.ModeSymlink != 0 {
		if err := os.Remove(modules); err != nil {
			return err
		}
	}
	cmd := exec.CommandContext(ctx, "npm", "ci", "--no-audit", "--no-fund")
	cmd.Dir = web
	if out, err := cmd.CombinedOutput(); err != nil {
		if errors.Is(err, exec.ErrNotFound) {
			return errors.New("npm is needed to build the page: install Node.js with npm")
		}
		return fmt.Errorf("npm ci: %w\n%s", err, out)
	}
	if err := os.MkdirAll(modules, 0o755); err != nil { // without dependencies npm makes none
		return err
	}
	return os.WriteFile(mark, stamp, 0o644)
}
