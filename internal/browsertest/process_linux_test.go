package browsertest

import (
	"os/exec"
	"syscall"
)

// group gives a command a process group of its own, and has it killed when the
// tests die without a chance to clean up.
func group(c *exec.Cmd) {
	c.SysProcAttr = &syscall.SysProcAttr{Setpgid: true, Pdeathsig: syscall.SIGKILL}
}

// end kills a command with all that it started.
func end(c *exec.Cmd) { syscall.Kill(-c.Process.Pid, syscall.SIGKILL) } //nolint:errcheck // it may have ended
