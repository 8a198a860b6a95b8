package partslist

import (
	"slices"
	"strings"

	"steelyard/internal/document"
	"steelyard/internal/spelling"
	"steelyard/internal/units"
	"steelyard/internal/words"
)

// header is what a column's header says.
type header struct {
	field string // "" when it says nothing that is known
	exact bool   // all its words are those of the field
	unit  string // of its numbers, "" when it names none
	total bool   // of all the pieces of a row
}

// headerWords are what a column of a field is called in English, German and
// French, name, mass and quantity in Dutch, Spanish and Italian too, folded. A
// phrase goes before a word.
var headerWords = func() map[string]string {
	m := make(map[string]string)
	for field, phrases := range map[string]string{
		"name": "name, part, parts, part name, component, components, item, items, title, description, product, article, " +
			"teil, teile, bauteil, bauteile, komponente, komponenten, bezeichnung, benennung, artikel, beschreibung, produkt, " +
			"nom, piece, composant, composants, designation, element, produit, " +
			"onderdeel, onderdelen, naam, omschrijving, pieza, componente, componentes, descripcion, articulo, producto, " +
			"nome, componenti, parte, parti, descrizione, articolo, prodotto",
		"mass": "mass, weight, masse, gewicht, poids, mass each, weight each, unit weight, unit mass, stuckgewicht, einzelgewicht, poids unitaire, " +
			"actual weight, measured weight, weighed, mass per piece, weight per piece, " +
			"poids piece, gewicht pro stuck, gewicht je stuck, massa, stukgewicht, gewicht per stuk, peso, masa, peso unitario, peso unidad, peso por unidad, peso cad",
		"half_width": "half width, halfwidth, tolerance, plus minus, uncertainty, accuracy, resolution, margin, " +
			"halbbreite, toleranz, unsicherheit, genauigkeit, abweichung, incertitude, precision, ecart",
		"quantity": "quantity, qty, count, pcs, pieces, amount, how many, number of pieces, " +
			"anzahl, menge, stuck, stueck, stk, stuckzahl, stueckzahl, quantite, qte, nombre, nombre de pieces, nb, units, " +
			"aantal, hoeveelheid, stuks, cantidad, cant, unidades, uds, ud, num piezas, quantita, q ta, qta, pezzi, pz, numero pezzi",
		"kind":      "kind, type, category, group, section, system, art, typ, kategorie, gruppe, baugruppe, sorte, genre, categorie, groupe",
		"basis":     "basis, source, known from, grundlage, quelle, herkunft, origine, base",
		"station":   "station, place, position, location, where, mounted at, ort, platz, einbauort, stelle, emplacement, lieu",
		"carrier":   "carrier, fixed to, attached to, mounted on, trager, befestigt an, fixe a, support",
		"note":      "note, notes, remark, remarks, comment, comments, info, notiz, notizen, bemerkung, bemerkungen, anmerkung, anmerkungen, kommentar, hinweis, remarque, remarques, commentaire, commentaires",
		"offset_x":  "offset x, x offset, x, forward",
		"offset_y":  "offset y, y offset, y, left",
		"offset_z":  "offset z, z offset, z, up",
		"within":    "within",
		"catalogue": "catalogue, catalog, katalog",
		"id":        "id",
	} {
		for phrase := range strings.SplitSeq(phrases, ", ") {
			m[phrase] = field
		}
	}
	return m
}()

// unitWords are the units that a header may name.
var unitWords = map[string]string{
	"g": units.Gram, "gr": units.Gram, "gram": units.Gram, "grams": units.Gram, "gramm": units.Gram, "gramme": units.Gram, "grammes": units.Gram,
	"kg": units.Kilogram, "kgs": units.Kilogram, "kilo": units.Kilogram, "kilos": units.Kilogram, "kilogram": units.Kilogram, "kilograms": units.Kilogram,
	"kilogramm": units.Kilogram, "kilogramme": units.Kilogram, "kilogrammes": units.Kilogram,
	"lb": units.Pound, "lbs": units.Pound, "pound": units.Pound, "pounds": units.Pound,
	"oz": units.Ounce, "ounce": units.Ounce, "ounces": units.Ounce,
}

// totalWords are the words for a sum in English, German, French, Dutch, Spanish
// and Italian, folded.
var totalWords = wordSet("total, totals, subtotal, subtotals, sum, overall, summe, gesamt, insgesamt, gesamtgewicht, gesamtmasse, gesamtsumme, " +
	"zwischensumme, teilsumme, totalgewicht, somme, totaux, soustotal, totaal, subtotaal, totaalgewicht, eindtotaal, tussentotaal, som, " +
	"totales, suma, totale, totali, subtotale, somma, complessivo")

func wordSet(list string) map[string]bool {
	set := make(map[string]bool)
	for w := range strings.SplitSeq(list, ", ") {
		set[w] = true
	}
	return set
}

// basisWords are the words for a basis, folded.
var basisWords = func() map[string]document.Basis {
	m := make(map[string]document.Basis)
	for basis, words := range map[document.Basis]string{
		document.Weighed: "weighed, measured, scale, own scale, actual, gewogen, gemessen, pese, mesure, waage",
		document.Stated:  "stated, claimed, maker, manufacturer, datasheet, hersteller, herstellerangabe, angegeben, annonce, fabricant, constructeur",
		document.Typical: "typical, usual, catalogue, typisch, ublich, typique, habituel",
		document.Guessed: "guessed, guess, estimate, estimated, assumed, about, geschatzt, schatzung, vermutet, estime, suppose",
	} {
		for w := range strings.SplitSeq(words, ", ") {
			m[w] = basis
		}
	}
	return m
}()

// readHeader understands a header.
func readHeader(s string) header {
	s = uncover(s[:min(len(s), 200)])
	var h header
	if strings.ContainsAny(s, "±") || strings.Contains(s, "+/-") {
		h.field, h.exact = "half_width", true
	}
	words := spelling.Words(s)
	kept := words[:0]
	for _, w := range words {
		switch {
		case totalWords[w]:
			h.total = true
			if strings.HasSuffix(w, "gewicht") || strings.HasSuffix(w, "masse") {
				kept = append(kept, "gewicht")
			}
		case unitWords[w] != "" && h.unit == "":
			h.unit = unitWords[w]
		case w == "mm" || w == "in" || w == "of" || w == "en" || w == "the" || w == "de" || w == "der" || w == "di":
		default:
			kept = append(kept, w)
		}
	}
	switch {
	case h.field != "":
	case len(kept) == 0 && h.unit != "":
		h.field, h.exact = "mass", true // "grams"
	case headerWords[strings.Join(kept, " ")] != "":
		h.field, h.exact = headerWords[strings.Join(kept, " ")], true
	default:
		for _, w := range kept {
			if f := headerWords[w]; f != "" && len(w) > 1 {
				h.field = f
				break
			}
		}
	}
	return h
}

// maxAbove is how many rows, such as a title, may stand above the headers.
const maxAbove = 5

// NotePrefix begins a row above the headers that is for people to read; it is
// skipped.
const NotePrefix = "# "

// head finds the row of headers, if there is one, and returns the rows below.
func (r *csvReader) head(rows []row) []row {
	width := 0
	for _, row := range rows {
		width = max(width, len(row.cells))
	}
	r.headers = make([]header, width)
	r.result.Columns = make([]words.Message, width)
	for i := range r.result.Columns {
		r.result.Columns[i] = words.Tell("list.column.name", "n", i+1)
	}
	at := headerRow(rows)
	if at < 0 {
		return rows
	}
	r.result.Header = true
	for _, row := range rows[:at] {
		if !strings.HasPrefix(row.cells[0], NotePrefix) {
			r.bad(row, words.Tell("list.row.above"))
		}
	}
	for i, s := range rows[at].cells {
		if r.headers[i] = readHeader(s); s != "" {
			r.result.Columns[i] = words.Plain(uncover(s))
		}
		// It is a number in French and a name in Spanish.
		if spelling.Fold(s) == "nombre" && !numbered(rows[at+1:], i) {
			r.headers[i].field = "name"
		}
	}
	return rows[at+1:]
}

// numbered reports whether most filled cells of a column are numbers.
func numbered(rows []row, i int) bool {
	numbers, texts := 0, 0
	for _, row := range rows[:min(len(rows), 200)] {
		switch {
		case i >= len(row.cells) || row.cells[i] == "":
		case numeric(row.cells[i]):
			numbers++
		default:
			texts++
		}
	}
	return numbers >= texts
}

// headerRow returns the number of the row of headers, -1 if there is none.
func headerRow(rows []row) int {
	for i, row := range rows[:min(len(rows), maxAbove+1)] {
		if slices.ContainsFunc(row.cells, numeric) {
			break
		}
		fields := make(map[string]bool)
		for _, s := range row.cells {
			fields[readHeader(s).field] = true
		}
		if fields["name"] && fields["mass"] {
			return i
		}
	}
	// The first row is one of headers if something in it is known, or if it has no
	// numbers but stands above some.
	first := rows[0].cells
	if slices.ContainsFunc(first, numeric) {
		return -1
	}
	for i, s := range first {
		below := len(rows) > 1 && i < len(rows[1].cells) && numeric(rows[1].cells[i])
		if s != "" && (below || readHeader(s).exact) {
			return 0
		}
	}
	return -1
}

// numeric reports whether a cell is a mass, or a number without a unit.
func numeric(s string) bool {
	s, _ = withoutAbout(s)
	_, err := units.ParseMass(s, units.Kilogram) // of kilograms no number is ambiguous
	return err == nil
}

// columns finds out which column holds which field.
func (r *csvReader) columns(rows []row) {
	if r.opt.Columns != nil {
		for f, i := range r.opt.Columns {
			switch {
			case !slices.Contains(CSVFields, f):
				r.warn("list.field", "field", words.Quote(f), "fields", words.Choose(CSVFields))
			case i < 0 || i >= len(r.headers):
				r.warn("list.column", "n", i+1, "field", words.Quote(f), "of", len(r.headers))
			default:
				r.result.Guess[f] = i
			}
		}
		return
	}
	guess := r.result.Guess
	// The masses of single pieces go before those of whole rows, a header that
	// says nothing else before one that says more, the first before the others.
	for _, rank := range []func(header) bool{
		func(h header) bool { return h.exact && !h.total },
		func(h header) bool { return !h.total },
		func(h header) bool { return true },
	} {
		for i, h := range r.headers {
			if _, there := guess[h.field]; !there && h.field != "" && rank(h) && !r.used(i) {
				guess[h.field] = i
			}
		}
	}
	_, name := guess["name"]
	_, mass := guess["mass"]
	if !name || !mass {
		r.byContent(rows, !name, !mass)
	}
	r.findRest(rows)
}

// used reports whether a column has a field already.
func (r *csvReader) used(i int) bool {
	for _, j := range r.result.Guess {
		if i == j {
			return true
		}
	}
	return false
}

// byContent finds the columns of names and masses, and of quantities, by what is
// in them.
func (r *csvReader) byContent(rows []row, name, mass bool) {
	rows = rows[:min(len(rows), 200)]
	texts := make([]int, len(r.headers))    // how many cells are texts
	distinct := make([]int, len(r.headers)) // how many different ones
	numbers := make([]int, len(r.headers))
	sum := make([]float64, len(r.headers))
	united := make([]int, len(r.headers)) // how many have a unit
	for i := range r.headers {
		seen := make(map[string]bool)
		for _, row := range rows {
			if i >= len(row.cells) || row.cells[i] == "" {
				continue
			}
			s, _ := withoutAbout(row.cells[i])
			if v, err := units.ParseMass(s, units.Kilogram); err == nil {
				numbers[i]++
				sum[i] += v / 1000
				if _, err := units.ParseMass(s, ""); err == nil {
					united[i]++
				}
			} else {
				texts[i]++
				if !seen[row.cells[i]] {
					seen[row.cells[i]] = true
					distinct[i]++
				}
			}
		}
	}
	// best returns the free column that is best by a measure above 0.
	best := func(measure func(i int) float64) int {
		at, most := -1, 0.0
		for i := range r.headers {
			if m := measure(i); !r.used(i) && m > most {
				at, most = i, m
			}
		}
		return at
	}
	if mass {
		i := best(func(i int) float64 {
			if numbers[i] <= texts[i] || r.headers[i].field != "" && r.headers[i].field != "mass" {
				return 0
			}
			return 1e9*float64(united[i]) + sum[i]/float64(numbers[i]) + 1e-9
		})
		if i >= 0 {
			r.result.Guess["mass"] = i
		}
	}
	if name {
		if i := best(func(i int) float64 { return float64(distinct[i]) }); i >= 0 {
			r.result.Guess["name"] = i
		}
	}
	if _, there := r.result.Guess["quantity"]; !there && !r.result.Header {
		i := best(func(i int) float64 {
			if numbers[i] == 0 || texts[i] > 0 || united[i] > 0 || sum[i]/float64(numbers[i]) > 12 {
				return 0
			}
			for _, row := range rows {
				if i < len(row.cells) && row.cells[i] != "" {
					if n, ok := pieces(row.cells[i]); !ok || n > 200 {
						return 0
					}
				}
			}
			return float64(numbers[i])
		})
		if i >= 0 {
			r.result.Guess["quantity"] = i
		}
	}
}
