package report

// Write returns a report as JSON, as Text does.
func Write(r *Report) ([]byte, error) {
	e := Evaluation{Report: r, texts: newTexts(len(r.Builds), len(r.Sides))}
	text, err := e.Text()
	return []byte(text), err
}
