//go:build !linux

package browsertest

import "os/exec"

func group(*exec.Cmd) {}

func end(c *exec.Cmd) { c.Process.Kill() } //nolint:errcheck // it may have ended
