package bridge

import (
	"strconv"

	"steelyard/internal/photograph"
)

// pictureFile takes the beginning of a file, as bytes, and how many the whole file
// has. It answers with how large the picture in it is and is to be kept, before
// anybody decodes it: the size of photograph.schema.json; or with what is wrong.
func (s *Session) pictureFile(head, bytes string) string {
	n, err := strconv.ParseFloat(bytes, 64)
	if err != nil {
		n = float64(len(head))
	}
	size, err := photograph.Look(head, n)
	if err != nil {
		return s.failed(problemOf("", err))
	}
	return answer(size)
}

// photograph takes a document, the id of a build and a photograph of it, JSON. It
// answers with what the photograph says of the build's frame: the reading of
// photograph.schema.json.
func (s *Session) photograph(args ...string) string {
	var p photograph.Photograph
	_, b, refusal := s.ofBuild(args, &p)
	if b == nil {
		return refusal
	}
	r, err := photograph.Read(&p, b)
	if err != nil {
		return s.failed(problemOf("", err))
	}
	return answer(r)
}
