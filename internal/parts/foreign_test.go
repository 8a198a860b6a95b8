package parts_test

import (
	"fmt"
	"strings"
	"testing"

	"steelyard/internal/parts"
	"steelyard/internal/partslist"
	"steelyard/internal/spelling"
)

// What parts are called in the trade (common practice, no source), and the kind
// and station that a list with that name must give.
var foreignNames = map[string]string{
	"German": `
		Rahmen Stahl: frame frame
		Federgabel 120 mm: fork fork-upper
		Starrgabel: fork-rigid fork-upper
		Dämpfer: shock shock
		Steuersatz: headset headset
		Sattelklemme: seat-clamp seat-clamp
		Steckachse hinten: axle rear-axle
		Steckachse vorne: axle front-axle
		Schnellspanner VR: axle front-axle
		Schaltauge: frame-mount rear-derailleur
		Hinterradnabe: hub rear-axle
		Vorderradnabe 32 Loch: hub front-axle
		Nabe HR: hub rear-axle
		Nabendynamo: dynamo front-axle
		Getriebenabe: gear-hub rear-axle
		Nabenschaltung 8-Gang: gear-hub rear-axle
		Felge vorn: rim front-axle
		Hinterradfelge: rim rear-axle
		Speichen hinten: spokes rear-axle
		Speichen und Nippel, vorne: spokes front-axle
		Reifen vorne 50-622: tyre front-axle
		Hinterreifen: tyre rear-axle
		Fahrradmantel hinten: tyre rear-axle
		Schlauch vorne: tube front-axle
		Hinterradschlauch: tube rear-axle
		Felgenband hinten: rim-tape rear-axle
		Dichtmilch hinten: sealant rear-axle
		Vorderrad: wheel front-axle
		Laufrad hinten: wheel rear-axle
		Kurbelgarnitur: crank bottom-bracket
		Innenlager: bottom-bracket bottom-bracket
		Tretlager BSA: bottom-bracket bottom-bracket
		Kettenblatt 38 Z: chainring chainring
		Kassette 11-42: cassette cassette
		Zahnkranz: cassette cassette
		Ritzel: cog cassette
		Kette: chain chain
		Zahnriemen: belt chain
		Riemenscheibe vorn: chainring chainring
		Riemenscheibe hinten: cog cassette
		Kettenspanner: tensioner rear-derailleur
		Schaltwerk: derailleur rear-derailleur
		Umwerfer: front-derailleur front-derailleur
		Schalthebel rechts: shifter bar
		Drehgriffschalter: shifter bar
		Schaltzug: cable down-tube
		Pedale: pedal pedals
		Tretlagergetriebe: crank-gearbox bottom-bracket
		Kettenschutz: guard chainring
		Bremsscheibe hinten 180: rotor rear-rotor
		Bremsscheibe vorne: rotor front-rotor
		Bremssattel vorne: brake front-caliper
		Scheibenbremse hinten: brake rear-caliper
		Hinterradbremse: brake rear-caliper
		Bremshebel links: brake-lever brake-levers
		Bremsleitung hinten: hose down-tube
		Lenker: bar bar
		Vorbau 80 mm: stem stem
		Lenkergriffe: grip grips
		Lenkerband: grip bar
		Klingel: bell bar
		Rückspiegel: mirror bar
		Sattel: saddle saddle
		Sattelstütze: seatpost seatpost
		Sattelstuetze 27,2: seatpost seatpost
		Variostütze: seatpost seatpost
		Scheinwerfer: light front-light
		Rücklicht: light rear-light
		Gepäckträger: rack rear-rack
		Lowrider vorne: rack front-rack
		Schutzblech hinten: mudguard rear-mudguard
		Vorderradschutzblech: mudguard front-mudguard
		Flaschenhalter: cage bottle-down-tube
		Seitenständer: stand stand
		Faltschloss: lock seat-tube
		Gepäcktasche hinten: pannier rear-panniers
		Lenkertasche: bag handlebar-bag
		Rahmentasche: bag frame-bag
		Satteltasche: bag saddle-bag
		Trinkflasche: bottle bottle-down-tube
		Luftpumpe: pump seat-tube
		Ersatzschlauch: spare saddle-bag
		Zelt: load rear-rack-deck`,
	"French": `
		Cadre acier: frame frame
		Fourche suspendue 120 mm: fork fork-upper
		Fourche rigide: fork-rigid fork-upper
		Amortisseur: shock shock
		Jeu de direction: headset headset
		Collier de selle: seat-clamp seat-clamp
		Axe traversant arrière: axle rear-axle
		Axe traversant avant: axle front-axle
		Blocage rapide avant: axle front-axle
		Patte de dérailleur: frame-mount rear-derailleur
		Moyeu arrière: hub rear-axle
		Moyeu avant 32 trous: hub front-axle
		Moyeu dynamo: dynamo front-axle
		Moyeu à vitesses intégrées: gear-hub rear-axle
		Jante avant: rim front-axle
		Jante AR: rim rear-axle
		Rayons arrière: spokes rear-axle
		Rayons et écrous, avant: spokes front-axle
		Pneu avant 50-622: tyre front-axle
		Pneu de la roue arrière: tyre rear-axle
		Chambre à air avant: tube front-axle
		Chambre à air AR: tube rear-axle
		Fond de jante arrière: rim-tape rear-axle
		Liquide préventif arrière: sealant rear-axle
		Roue avant: wheel front-axle
		Roue arrière: wheel rear-axle
		Pédalier: crank bottom-bracket
		Manivelles: crank bottom-bracket
		Boîtier de pédalier: bottom-bracket bottom-bracket
		Plateau 38 dents: chainring chainring
		Cassette 11-42: cassette cassette
		Pignon: cog cassette
		Chaîne: chain chain
		Courroie: belt chain
		Poulie avant: chainring chainring
		Poulie arrière: cog cassette
		Tendeur de chaîne: tensioner rear-derailleur
		Dérailleur arrière: derailleur rear-derailleur
		Dérailleur avant: front-derailleur front-derailleur
		Manettes de vitesses: shifter bar
		Poignée tournante: shifter bar
		Câble de dérailleur: cable down-tube
		Pédales: pedal pedals
		Boîte de vitesses: crank-gearbox bottom-bracket
		Carter de chaîne: guard chain
		Disque de frein arrière: rotor rear-rotor
		Disque avant 180: rotor front-rotor
		Étrier avant: brake front-caliper
		Frein à disque arrière: brake rear-caliper
		Leviers de frein: brake-lever brake-levers
		Durite de frein arrière: hose down-tube
		Guidon: bar bar
		Cintre route: bar bar
		Potence 80 mm: stem stem
		Poignées: grip grips
		Ruban de guidon: grip bar
		Sonnette: bell bar
		Rétroviseur: mirror bar
		Selle: saddle saddle
		Tige de selle: seatpost seatpost
		Tige de selle télescopique: seatpost seatpost
		Phare: light front-light
		Feu arrière: light rear-light
		Porte-bagages arrière: rack rear-rack
		Porte-bagages avant: rack front-rack
		Garde-boue arrière: mudguard rear-mudguard
		Garde-boue AV: mudguard front-mudguard
		Porte-bidon: cage bottle-down-tube
		Béquille latérale: stand stand
		Antivol pliant: lock seat-tube
		Sacoche arrière gauche: pannier rear-panniers
		Sacoche avant: pannier front-panniers
		Sacoche de guidon: bag handlebar-bag
		Sacoche de cadre: bag frame-bag
		Sacoche de selle: bag saddle-bag
		Bidon: bottle bottle-down-tube
		Pompe: pump seat-tube
		Chambre à air de rechange: spare saddle-bag
		Tente: load rear-rack-deck`,
}

func TestForeignNamesFindKindAndPlace(t *testing.T) {
	for language, list := range foreignNames {
		names := 0
		for line := range strings.Lines(list) {
			name, want, ok := strings.Cut(strings.TrimSpace(line), ": ")
			if !ok {
				continue
			}
			names++
			r := partslist.ReadCSV([]byte(fmt.Sprintf("name,mass_g\n%q,100\n", name)), partslist.CSVOptions{})
			if len(r.Parts) != 1 || len(r.Unplaced) != 0 {
				t.Errorf("%s: %q: %+v", language, name, r)
				continue
			}
			if got := r.Parts[0].Kind + " " + r.Parts[0].Station; got != want {
				t.Errorf("%s: %q is %s, want %s (%q)", language, name, got, want, parts.EnglishWords(spelling.Words(name)))
			}
		}
		if names < 60 {
			t.Errorf("only %d names in %s", names, language)
		}
	}
}

func TestEnglishWords(t *testing.T) {
	for name, want := range map[string]string{
		"Hub gear":                   "gear hub",
		"Hinterradnabe":              "rear hub",
		"Gepaecktraeger":             "rack",
		"Bremsscheibenschrauben":     "brake rotors bolts hardware",
		"Pedal links":                "pedal left",
		"Shock links":                "shock links",
		"tige de selle":              "seatpost",
		"Dérailleur de la roue, AR":  "rear derailleur of wheel",
		"Jantes":                     "rims",
		"handlebar":                  "handlebar",
		"Steuerrohr":                 "steuerrohr",
		"":                           "",
		"Kettenkettenkettenkettenxx": "kettenkettenkettenkettenxx",
	} {
		if got := strings.Join(parts.EnglishWords(spelling.Words(name)), " "); got != want {
			t.Errorf("%q is %q, want %q", name, got, want)
		}
	}
}

// What is in no catalogue has no place, and is counted.
func TestUnknownPartsAreCounted(t *testing.T) {
	r := partslist.ReadCSV([]byte("name,g\nSattel,300\nXyzzy,200\nReflectors,60\nFrobnicator for the tent,2x\nFlux on a thing,50\n"), partslist.CSVOptions{})
	if got := fmt.Sprint(r.Unplaced); got != "[1 3]" || r.Total != 610 || r.Placed != 360 {
		t.Errorf("%v are not placed, %v of %v g", got, r.Placed, r.Total)
	}
	r = partslist.ReadCSV([]byte("name,g,station\nXyzzy,200,Saddle\n"), partslist.CSVOptions{})
	if len(r.Unplaced) != 0 || r.Parts[0].Station != "saddle" {
		t.Errorf("%+v", r)
	}
}
