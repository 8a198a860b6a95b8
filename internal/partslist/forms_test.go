package partslist

import (
	"encoding/binary"
	"fmt"
	"slices"
	"strings"
	"testing"
	"unicode/utf16"

	"github.com/google/go-cmp/cmp"

	"steelyard/internal/document"
	"steelyard/internal/parts"
)

// latin1 writes a text in a code page that has its letters where Unicode has them.
func latin1(s string) []byte {
	var out []byte
	for _, r := range s {
		if r > 0xff {
			panic("not in the code page")
		}
		out = append(out, byte(r))
	}
	return out
}

func wide(s string, order binary.AppendByteOrder, mark bool) []byte {
	var out []byte
	if mark {
		s = "\ufeff" + s
	}
	for _, u := range utf16.Encode([]rune(s)) {
		out = order.AppendUint16(out, u)
	}
	return out
}

// The same list gives the same parts, however its letters and line ends are
// written.
func TestEncodingsAndLineEnds(t *testing.T) {
	text := "Stück;Bezeichnung;Gewicht\n2;Pedale;182,5\n1;Sattelstütze;280\n1;Schläuche, größer;215\n"
	want := ReadCSV([]byte(text), CSVOptions{}).Parts
	if len(want) != 4 || want[0].Quantity != 2 || want[1].Name != "Sattelstütze" {
		t.Fatalf("%+v", want)
	}
	for end, as := range map[string]string{"LF": "\n", "CR LF": "\r\n", "CR": "\r"} {
		s := strings.ReplaceAll(text, "\n", as)
		for name, c := range map[string]struct {
			raw      []byte
			encoding string
		}{
			"UTF-8":           {[]byte(s), UTF8},
			"UTF-8 with mark": {[]byte("\ufeff" + s), UTF8},
			"Windows-1252":    {latin1(s), Windows1252},
			"UTF-16 LE":       {wide(s, binary.LittleEndian, true), UTF16},
			"UTF-16 BE":       {wide(s, binary.BigEndian, true), UTF16},
			"UTF-16 LE bare":  {wide(s, binary.LittleEndian, false), UTF16},
			"UTF-16 BE bare":  {wide(s, binary.BigEndian, false), UTF16},
		} {
			r := ReadCSV(c.raw, CSVOptions{})
			if r.Encoding != c.encoding {
				t.Errorf("%s, %s is read as %s", name, end, r.Encoding)
			}
			if diff := cmp.Diff(want, r.Parts); diff != "" {
				t.Errorf("%s, %s: %s", name, end, diff)
			}
			if warned := len(r.Problems) > 0; warned != (c.encoding == Windows1252) {
				t.Errorf("%s, %s: %v", name, end, r.Problems)
			}
		}
	}
	// Line numbers count bare CRs too.
	r := ReadCSV([]byte("name,g\rRim,500\rBell,heavy\r"), CSVOptions{})
	if len(r.Bad) != 1 || r.Bad[0].Line != 3 {
		t.Errorf("%+v", r.Bad)
	}
	// A damaged letter does not make another encoding of the rest, and is told.
	r = ReadCSV([]byte("Stück;Bezeichnung;Gewicht\n2;Pedale, größer \xff;180\n"), CSVOptions{})
	if r.Encoding != UTF8 || len(r.Parts) != 1 || r.Parts[0].Quantity != 2 || len(r.Problems) != 1 {
		t.Errorf("%+v", r)
	}
	// Windows-1252 differs from Latin-1 in the euro sign, quotes and dashes.
	r = ReadCSV([]byte("name;g;Bemerkung\nRim \x96 \x84gro\xdf\x93;500;12 \x80\n"), CSVOptions{})
	if len(r.Parts) != 1 || r.Parts[0].Name != "Rim – „groß“" || r.Parts[0].Note != "12 €" {
		t.Errorf("%+v", r.Parts)
	}
}

// placesOf writes how many pieces of the parts are at which station.
func placesOf(parts []document.Part) string {
	var out []string
	for _, p := range parts {
		out = append(out, fmt.Sprintf("%s %d %s %v", p.Name, p.Quantity, p.Station, p.Mass))
	}
	return strings.Join(out, "; ")
}

func TestOneGoesToEachEnd(t *testing.T) {
	for list, want := range map[string]string{
		"Rim,2,500":                      "Rim 1 front-axle 500; Rim 1 rear-axle 500",
		"Tyre,2,800":                     "Tyre 1 front-axle 800; Tyre 1 rear-axle 800",
		"Inner tube,2,200":               "Inner tube 1 front-axle 200; Inner tube 1 rear-axle 200",
		"Brake rotor,2,140":              "Brake rotor 1 front-rotor 140; Brake rotor 1 rear-rotor 140",
		"Caliper,2,120":                  "Caliper 1 front-caliper 120; Caliper 1 rear-caliper 120",
		"Through axle,2,60":              "Through axle 1 front-axle 60; Through axle 1 rear-axle 60",
		"Fender,2,350":                   "Fender 1 front-mudguard 350; Fender 1 rear-mudguard 350",
		"Schutzblech,2,350":              "Schutzblech 1 front-mudguard 350; Schutzblech 1 rear-mudguard 350",
		"Jante,2,500":                    "Jante 1 front-axle 500; Jante 1 rear-axle 500",
		"Spokes,64,6.5":                  "Spokes 32 front-axle 6.5; Spokes 32 rear-axle 6.5",
		"Spokes,65,6.5":                  "Spokes 32 front-axle 6.5; Spokes 33 rear-axle 6.5",
		"Spokes,36,6.5":                  "Spokes 36 front-axle 6.5", // of one wheel
		"Rear rim,2,500":                 "Rear rim 2 rear-axle 500", // the list says so
		"Axle nuts,2,30":                 "Axle nuts 2 rear-axle 30", // these are at the rear only
		"Pedal,2,180":                    "Pedal 2 pedals 180",
		"Rim,1,500\nRim,1,520":           "Rim 1 front-axle 500; Rim 1 rear-axle 520",
		"Tyre A,1,800\nTyre rear,1,900":  "Tyre A 1 front-axle 800; Tyre rear 1 rear-axle 900",
		"Front tyre,1,800\nTyre B,1,900": "Front tyre 1 front-axle 800; Tyre B 1 rear-axle 900",
		"Hub,1,300\nHub gear,1,1700":     "Hub 1 front-axle 300; Hub gear 1 rear-axle 1700",
		"Dynamo hub,1,400\nHub,1,300":    "Dynamo hub 1 front-axle 400; Hub 1 rear-axle 300",
		"Front hub 28h,1,155\nRear hub 36h,1,300\nSpokes,64,6": "Front hub 28h 1 front-axle 155; Rear hub 36h 1 rear-axle 300; Spokes 28 front-axle 6; Spokes 36 rear-axle 6",
		"Tyres,1,1600":               "Tyres 1 front-axle 800; Tyres 1 rear-axle 800",
		"Tyre (pair),,1600":          "Tyre (pair) 1 front-axle 800; Tyre (pair) 1 rear-axle 800",
		"Rims front and rear,1,1000": "Rims front and rear 1 front-axle 500; Rims front and rear 1 rear-axle 500",
		"Laufradsatz,1,1950":         "Laufradsatz 1 front-axle 900; Laufradsatz 1 rear-axle 1050", // as the catalogue's two share it
		"Roues,1,1950":               "Roues 1 front-axle 900; Roues 1 rear-axle 1050",
	} {
		r := ReadCSV([]byte("name,quantity,mass_g\n"+list+"\n"), CSVOptions{})
		if got := placesOf(r.Parts); got != want {
			t.Errorf("%q: %s, want %s", list, got, want)
		}
	}
	// The two are of one type: what is wrong with the mass of one is wrong with
	// that of the other.
	text := []byte("name,quantity,mass_g\nBell,1,30\nRim,2,500\nTyre,1,800\n")
	r := ReadCSV(text, CSVOptions{})
	if parts.SourceKey(&r.Parts[1]) != parts.SourceKey(&r.Parts[2]) || r.Parts[1].Carrier != document.FrontWheel || r.Parts[2].Carrier != document.RearWheel || r.Parts[1].ID == r.Parts[2].ID {
		t.Errorf("%+v", r.Parts[1:])
	}
	// It is told, and changed on demand.
	want := []EndRow{
		{Line: 3, Name: "Rim", Pieces: 2, Front: 1, Rear: 1, Choice: EndEach, Each: true},
		{Line: 4, Name: "Tyre", Pieces: 1, Front: 1, Choice: EndFront},
	}
	if diff := cmp.Diff(want, r.Ends); diff != "" {
		t.Error(diff)
	}
	r = ReadCSV(text, CSVOptions{Ends: map[int]string{3: EndRear, 4: EndRear, 9: EndFront}})
	if got := placesOf(r.Parts); got != "Bell 1 bar 30; Rim 2 rear-axle 500; Tyre 1 rear-axle 800" {
		t.Error(got)
	}
	// What somebody types as one part stays one.
	r = ReadCSV([]byte("name,mass_g\nTyres,1600\nTotal,5\n"), CSVOptions{AsIs: true})
	if got := placesOf(r.Parts); got != "Tyres 1 front-axle 1600; Total 1 frame 5" {
		t.Error(got)
	}
	// A list that says where its parts are is believed.
	r = ReadCSV([]byte("name,quantity,mass_g,station\nRim,2,500,rear axle\n"), CSVOptions{})
	if got := placesOf(r.Parts); got != "Rim 2 rear-axle 500" || len(r.Ends) > 0 {
		t.Error(got)
	}
}

func TestPoundsAndOuncesInTwoColumns(t *testing.T) {
	for text, want := range map[string]string{
		"Part,Weight (lb),Weight (oz)\nFrame,5,8\nSaddle,,11\nLock,2,\n": "Frame 1 frame 2495; Saddle 1 saddle 312; Lock 1 seat-tube 907",
		"Part,Weight (oz),Weight (lb)\nFrame,8,5\n":                      "Frame 1 frame 2495",
		"Part,Weight (kg),Weight (g)\nFrame,2,495\nSaddle,0,312\n":       "Frame 1 frame 2495; Saddle 1 saddle 312",
		// The same mass twice.
		"Part,Weight (lb),Weight (oz)\nFrame,5.5,88\nSaddle,0.6875,11\n": "Frame 1 frame 2495; Saddle 1 saddle 312",
		"Part,Weight (kg),Weight (g)\nFrame,2,2000\nSaddle,0.31,310\n":   "Frame 1 frame 2000; Saddle 1 saddle 310",
	} {
		r := ReadCSV([]byte(text), CSVOptions{})
		for i := range r.Parts {
			r.Parts[i].Mass = float64(int(r.Parts[i].Mass + 0.5))
		}
		if got := placesOf(r.Parts); got != want {
			t.Errorf("%q: %s, want %s", text, got, want)
		}
	}
	// Chosen by hand, in columns that do not say their unit.
	r := ReadCSV([]byte("a,b,c\nFrame,5,8\n"), CSVOptions{Columns: map[string]int{"name": 0, "mass": 1, "mass_rest": 2}, MassUnit: "lb"})
	if len(r.Parts) != 1 || int(r.Parts[0].Mass+0.5) != 2495 {
		t.Errorf("%+v", r)
	}
}

func TestUnitByWhatThePartsWeigh(t *testing.T) {
	for text, want := range map[string]string{
		"Part,Weight\nFrame,2.4\nFork,1.6\nSaddle,0.3\n":               "kg parts 4300",
		"Part,Weight\nSaddle,0.35\n":                                   "kg parts 350",
		"Teil;Gewicht\nRahmen;2,4\nSattel;0,31\nGetriebenabe;1,75\n":   "kg parts 4460",
		"Part,Weight\nFrame,85\nFork,56\nSaddle,11\nStem,5\n":          "oz parts 4451",
		"Part,Weight\nFrame,5.5\nSaddle,0.7\nFork,3.5\nGear hub,3.9\n": "lb parts 6169",
		"Part,Weight\nFrame,2400\nSaddle,310\n":                        "g usual 2710",
		"Part,Weight (kg)\nFrame,2.4\n":                                "kg header 2400",
		"Part,Weight\nFrame,2.4 kg\nSaddle,310 g\n":                    "g cells 2710",
		"Part,Weight\nValve cap,2\nSaddle,310\nBolt,5\nCable tie,1\n":  "g usual 318", // small things do not make kilograms
		"name,mass\na,0.35\nb,1.2\nc,0.5\nd,2\ne,0.1\n":                "kg parts 4150",
		"name,mass\na,35\nb,12\n":                                      "g usual 47",
		"Part,Weight,Qty\nRim,0.5,2\nTotal,1,\n":                       "kg parts 1000",
	} {
		r := ReadCSV([]byte(text), CSVOptions{})
		if got := fmt.Sprintf("%s %s %.0f", r.MassUnit, r.UnitBy, r.Total); got != want {
			t.Errorf("%q: %s, want %s", text, got, want)
		}
		r = ReadCSV([]byte(text), CSVOptions{MassUnit: "lb"})
		if !strings.HasPrefix(want, "g cells") && !strings.HasPrefix(want, "kg header") && (r.MassUnit != "lb" || r.UnitBy != UnitAsked) {
			t.Errorf("%q: %s, %s", text, r.MassUnit, r.UnitBy)
		}
	}
}

func TestHeadersInSixLanguages(t *testing.T) {
	for language, text := range map[string]string{
		"English":    "Component;Qty;Weight (g)",
		"English 2":  "Item;Pcs;Mass each (g)",
		"German":     "Bauteil;Anzahl;Gewicht in g",
		"German 2":   "Bezeichnung;Stückzahl;Einzelgewicht (g)",
		"French":     "Pièce;Quantité;Poids (g)",
		"French 2":   "Désignation;Nombre;Poids unitaire (g)",
		"Dutch":      "Onderdeel;Aantal;Gewicht (gram)",
		"Dutch 2":    "Omschrijving;Stuks;Gewicht per stuk (g)",
		"Spanish":    "Pieza;Cantidad;Peso (g)",
		"Spanish 2":  "Nombre;Unidades;Peso unitario (g)",
		"Italian":    "Componente;Quantità;Peso (g)",
		"Italian 2":  "Descrizione;Pezzi;Massa (g)",
		"Italian 3":  "Nome;Q.tà;Peso cad. (g)",
		"numbers up": "Peso (g);Cantidad;Nombre",
	} {
		row := "\nPedal;2;180\nSaddle;1;300\n"
		if strings.HasPrefix(text, "Peso") {
			row = "\n180;2;Pedal\n300;1;Saddle\n"
		}
		r := ReadCSV([]byte(text+row), CSVOptions{})
		if got := placesOf(r.Parts); got != "Pedal 2 pedals 180; Saddle 1 saddle 300" || !r.Header || len(r.Bad) > 0 {
			t.Errorf("%s: %s %+v %v", language, got, r.Bad, r.Guess)
		}
	}
	for _, total := range []string{"Total weight (g)", "Gesamtgewicht (g)", "Poids total (g)", "Totaalgewicht (g)", "Peso total (g)", "Peso totale (g)"} {
		r := ReadCSV([]byte("name;qty;"+total+"\nPedal;2;360\n"), CSVOptions{})
		if got := placesOf(r.Parts); got != "Pedal 2 pedals 180" {
			t.Errorf("%s: %s", total, got)
		}
	}
}

func TestSumsAreLeftOut(t *testing.T) {
	for _, name := range []string{
		"Total", "TOTAL:", "Grand total", "Subtotal", "Sub-total wheels", "Sum", "Total weight", "Bike total",
		"Summe", "Zwischensumme", "Gesamt", "Gesamtgewicht", "Summe Laufräder", "Insgesamt",
		"Somme", "Sous-total", "Poids total", "Total général", "Totaux",
		"Totaal", "Subtotaal", "Totaalgewicht", "Tussentotaal", "Som",
		"Suma", "Peso total", "Total general",
		"Totale", "Somma", "Peso totale", "Totale parziale", "Peso complessivo",
	} {
		r := ReadCSV([]byte("name,g\nSaddle,300\n"+name+",999\n"), CSVOptions{})
		if len(r.Parts) != 1 || len(r.Sums) != 1 || r.Sums[0].Line != 3 || !r.Sums[0].Can || r.Total != 300 {
			t.Errorf("%q: %d parts, %+v", name, len(r.Parts), r.Sums)
		}
	}
	for _, name := range []string{"Saddle", "Summit bag", "Somewhere", "Pedal"} {
		if isTotal(name) {
			t.Errorf("%q is taken for a sum", name)
		}
	}

	lines := func(r CSVResult) (out []int) {
		for _, s := range r.Sums {
			out = append(out, s.Line)
		}
		return out
	}
	for text, want := range map[string][]int{
		// Sections with a sum each, and one of all.
		"name,qty,g\nRim,1,500\nHub,1,300\nTyre,1,800\nWheelies,,1600\nSaddle,1,300\nPost,1,280\nBell,1,30\nSeaty,,610\nEverything,,2210\n": {5, 9, 10},
		// A row without a name.
		"name,qty,g\nRim,2,500\nHub,1,300\n,,1300\n": {4},
		// A column added up without the quantities.
		"name,qty,g\nRim,2,500\nHub,1,300\nTyre,2,800\nXyz,,1600\n": {5},
		// Everything rounded to hundredths of kilograms.
		"name,kg\nRim,0.51\nHub,0.33\nTyre,0.81\nXyz,1.66\n": {5},
		// Parts that happen to weigh as much as the two or three before them.
		"name,g\nGrip,50\nBell,50\nMirror,100\nSaddle,200\n": nil,
		"name,g\nRim,500\nHub,300\nTyre,800\n":               nil,
		"name,g\nRim,500\nHub,300\nTyre,800\nXyz,1650\n":     nil,
	} {
		r := ReadCSV([]byte(text), CSVOptions{})
		if got := lines(r); !slices.Equal(got, want) {
			t.Errorf("%q: sums in %v, want %v: %+v", text, got, want, r.Sums)
		}
	}
	// What it sums is told, and it can be taken in.
	text := []byte("name,g\nRim,500\nHub,300\nTyre,800\nXyz,1600\nTotal,1600\n")
	r := ReadCSV(text, CSVOptions{})
	want := []SumRow{{Line: 5, Name: "Xyz", Mass: 1600, Of: []int{2, 4}, Can: true}, {Line: 6, Name: "Total", Mass: 1600, Of: []int{}, Can: true}}
	if diff := cmp.Diff(want, r.Sums); diff != "" {
		t.Error(diff)
	}
	r = ReadCSV(text, CSVOptions{Sums: []int{5}})
	if len(r.Parts) != 4 || r.Parts[3].Name != "Xyz" || len(r.Sums) != 2 || !r.Sums[0].Taken || r.Sums[1].Taken {
		t.Errorf("%s %+v", placesOf(r.Parts), r.Sums)
	}
	// A list that this program wrote has none.
	b := &document.Build{Parts: []document.Part{
		{ID: "p1", Name: "Total", Kind: "other", Quantity: 1, Mass: 100, Station: "frame", Carrier: document.MainFrame, Basis: document.Stated, Shape: document.Shape{Form: document.FormPoint}},
	}}
	if r := ReadCSV(WriteCSV(b, CSVStyle{}), CSVOptions{}); len(r.Parts) != 1 || len(r.Sums) != 0 {
		t.Errorf("%+v", r)
	}
}
