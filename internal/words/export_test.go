package words

// English returns the words that come with the program.
func English() *Words { return english() }
