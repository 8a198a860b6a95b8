// Package units reads masses and lengths as people write them, and writes them
// as people read them.
//
// Inside the program a mass is a number of grams and a length a number of
// millimetres; pounds, ounces and inches are a matter of reading and writing
// only. Reading is generous about form (decimal comma or point, spaces and
// marks between thousands, "2 lb 3 oz", "1 1/8 in") and strict about meaning:
// where a text could be two different numbers, such as 1.234 g, it is refused
// with both readings named. Writing rounds to what is known: at most two
// significant digits of an uncertainty (JCGM 100:2008, 7.2.6), and the value to
// the same place.
package units
