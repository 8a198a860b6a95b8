package weighin

// ExplainByWeights opens the first explanation to the tests.
var ExplainByWeights = explainByWeights
