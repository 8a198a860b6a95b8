// Package reconcile brings a weigh-in of a document and the parts list of the
// build that was weighed together: it puts the bike into the state that it was
// weighed in, has package weighin work out what the scale says, and names the
// lines of the document whose masses explain it.
package reconcile
