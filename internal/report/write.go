package report

import "github.com/goccy/go-json"

// Write returns a report as JSON. Every number of a report that came out of
// this package is finite, so it does not fail for one.
func Write(r *Report) ([]byte, error) {
	return json.MarshalWithOption(r, json.DisableHTMLEscape())
}
