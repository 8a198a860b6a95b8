// Package spelling compares words as people type them: without case and marks,
// and with a slip of the finger.
package spelling
