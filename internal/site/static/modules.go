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

// modules runs `npm ci` in web when the modules there are not those of the
// lock file: after a checkout, and after the lock file changed.
func modules(ctx context.Context, web string) error {
	lock, err := os.ReadFile(filepath.Join(web, "package-lock.json"))
	if errors.Is(err, fs.ErrNotExist) {
		return nil // a page without dependencies
	}
	if err != nil {
		return err
	}
	sum := sha256.Sum256(lock)
	stamp := []byte(hex.EncodeToString(sum[:]))
	mark := filepath.Join(web, "node_modules", ".steelyard-lock")
	if old, err := os.ReadFile(mark); err == nil && bytes.Equal(old, stamp) {
		return nil
	}
	cmd := exec.CommandContext(ctx, "npm", "ci", "--no-audit", "--no-fund")
	cmd.Dir = web
	if out, err := cmd.CombinedOutput(); err != nil {
		if errors.Is(err, exec.ErrNotFound) {
			return errors.New("npm is needed to build the page: install Node.js with npm")
		}
		return fmt.Errorf("npm ci: %w\n%s", err, out)
	}
	return os.WriteFile(mark, stamp, 0o644)
}
