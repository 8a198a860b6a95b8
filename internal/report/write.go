package report

import (
	"bytes"
	"strings"

	"github.com/goccy/go-json"
)

// Write returns a report as JSON. Every number of a report that came out of
// this package is finite, so it does not fail for one.
func Write(r *Report) ([]byte, error) { return written(r) }

func written(v any) ([]byte, error) {
	return json.MarshalWithOption(v, json.DisableHTMLEscape())
}

// texts are builds and sides of a report as JSON, nil where they have not been
// written.
type texts struct{ builds, sides [][]byte }

func newTexts(builds, sides int) texts {
	return texts{make([][]byte, builds), make([][]byte, sides)}
}

// Text returns what [Write] returns of the report. What was taken over from the
// evaluation before, and written then, is not written again.
func (e *Evaluation) Text() (string, error) {
	rest := *e.Report
	rest.Builds, rest.Sides = []Build{}, []Side{}
	frame, err := Write(&rest)
	if err != nil {
		return "", err
	}
	size := len(frame)
	for i := range e.Report.Builds {
		if err := write(&e.texts.builds[i], &e.Report.Builds[i], &size); err != nil {
			return "", err
		}
	}
	for i := range e.Report.Sides {
		if err := write(&e.texts.sides[i], &e.Report.Sides[i], &size); err != nil {
			return "", err
		}
	}
	// Within a text the quotes would be escaped: this is the place itself.
	before, after, _ := bytes.Cut(frame, []byte(`"builds":[],"sides":[]`))
	var out strings.Builder
	out.Grow(size)
	out.Write(before)
	out.WriteString(`"builds":[`)
	join(&out, e.texts.builds)
	out.WriteString(`],"sides":[`)
	join(&out, e.texts.sides)
	out.WriteByte(']')
	out.Write(after)
	return out.String(), nil
}

// write writes v to text if that is not done yet, and adds its length to size,
// with the comma after it.
func write(text *[]byte, v any, size *int) (err error) {
	if *text == nil {
		*text, err = written(v)
	}
	*size += len(*text) + 1
	return err
}

func join(out *strings.Builder, texts [][]byte) {
	for i, text := range texts {
		if i > 0 {
			out.WriteByte(',')
		}
		out.Write(text)
	}
}
