package linetable

import "testing"

// Memory returns what a program's memory holds when it starts.
func Memory(t *testing.T, program []byte) []byte {
	t.Helper()
	image, _, err := memory(program)
	if err != nil {
		t.Fatal(err)
	}
	return image
}
