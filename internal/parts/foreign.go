package parts

import (
	"slices"
	"strings"
	"sync"
	"unicode/utf8"

	"steelyard/internal/order"
)

// EnglishWords turns the words of a part's name, see [spelling.Words], into those
// that the catalogue uses: German and French ones, and what else people call a
// part in English. Unknown words stay as they are. German words may be run
// together, Hinterradnabe; French phrases are known as a whole, and "of" stands
// between the part and what it belongs to, as in English. "Front" and "rear" come
// first, wherever they stand in the name.
func EnglishWords(words []string) []string {
	d := foreignWords()
	out := make([]string, 0, len(words)+2)
	for i := 0; i < len(words); {
		english, n := d.phrase(words[i:])
		if n == 0 {
			if english, n = d.compound(words[i]), 1; english == nil {
				english = words[i : i+1]
			}
		}
		if words[i] == "links" && i > 0 && !slices.Contains(linkedWith, words[i-1]) {
			english = []string{"left"} // in German
		}
		out = append(out, english...)
		i += n
	}
	order.Stable(out, func(a, b string) int { return endFirst(a) - endFirst(b) })
	return out
}

func endFirst(w string) int {
	if w == "front" || w == "rear" {
		return 0
	}
	return 1
}

// linkedWith are the words before English links.
var linkedWith = []string{"shock", "suspension", "rocker", "chain", "quick", "rear", "alloy", "aluminium", "aluminum", "carbon", "steel"}

// dictionary holds English words by the word or phrase that means them.
type dictionary struct {
	words   map[string][]string
	begins  map[string][]string // what only the beginning of a compound means
	longest int                 // words of a phrase
}

// phrase returns the English words for the longest phrase that the words begin
// with, and the number of words in it; 0 when there is none.
func (d *dictionary) phrase(words []string) (english []string, n int) {
	for n := min(d.longest, len(words)); n > 0; n-- {
		phrase := strings.Join(words[:n], " ")
		if e, ok := d.word(phrase); ok {
			return e, n
		}
		single := slices.Clone(words[:n])
		plural := false
		for i, w := range single {
			single[i] = singular(w)
			plural = plural || single[i] != w
		}
		if !plural {
			continue
		}
		if e, ok := d.word(strings.Join(single, " ")); ok && len(e) > 0 {
			e = slices.Clone(e)
			if last := &e[len(e)-1]; !strings.HasSuffix(*last, "s") {
				*last += "s"
			}
			return e, n
		}
	}
	return nil, 0
}

// word looks a word up, also when its umlauts are written with an e.
func (d *dictionary) word(w string) ([]string, bool) {
	e, ok := d.words[w]
	if !ok {
		e, ok = d.words[umlauts.Replace(w)]
	}
	return e, ok
}

var umlauts = strings.NewReplacer("ae", "a", "oe", "o", "ue", "u")

// compound takes a word apart into words of the dictionary, nil when it is not
// made of them.
func (d *dictionary) compound(w string) []string {
	if utf8.RuneCountInString(w) < 6 || len(w) > 60 {
		return nil
	}
	if e := d.apart(w, true); e != nil {
		return e
	}
	if plain := umlauts.Replace(w); plain != w {
		return d.apart(plain, true)
	}
	return nil
}

// apart divides the rest of a compound, the longest first part first.
func (d *dictionary) apart(w string, whole bool) []string {
	if !whole {
		if e, ok := d.words[w]; ok && len(e) > 0 {
			return e
		}
	}
	for n := len(w) - 3; n >= 3; n-- {
		e, ok := d.begins[w[:n]]
		if !ok {
			if e, ok = d.words[w[:n]]; !ok {
				continue
			}
		}
		for _, link := range []string{"", "n", "s", "en", "es"} {
			if rest, ok := strings.CutPrefix(w[n:], link); ok && len(rest) >= 3 {
				if tail := d.apart(rest, false); tail != nil {
					return slices.Concat(e, tail)
				}
			}
		}
	}
	return nil
}

// foreignWords reads the list below: to the right of = the English words, to the
// left what means them, folded, "-" after what only begins a compound.
var foreignWords = sync.OnceValue(func() *dictionary {
	d := &dictionary{words: make(map[string][]string), begins: make(map[string][]string)}
	for line := range strings.Lines(foreignParts) {
		left, right, ok := strings.Cut(strings.TrimSpace(line), "=")
		if !ok {
			continue
		}
		english := strings.Fields(right)
		for w := range strings.SplitSeq(left, ",") {
			w = strings.TrimSpace(w)
			if begin, only := strings.CutSuffix(w, "-"); only {
				d.begins[begin] = english
				continue
			}
			d.words[w] = english
			d.longest = max(d.longest, strings.Count(w, " ")+1)
		}
	}
	return d
})

const foreignParts = `
English, where it has more than one word
	hub gear, hub gears, internal hub gear, geared hub = gear hub
	back wheel = rear wheel
	back tyre, back tire = rear tyre
	back hub = rear hub
	back rim = rear rim
	back brake = rear brake
	lowrider, low rider = front rack
	lowrider pannier, lowrider bag, lowrider tasche, lowrider taschen, sacoche lowrider = front pannier
	post, seat post, saddle post = seatpost
	post mount = post mount
	wheelset, wheel set, wheels, pair of wheels = wheel pair

German: where
	vorne, vorn, vorder, vordere, vorderer, vorderes, vorder-, vorderrad-, front-, vr = front
	hinten, hinter, hintere, hinterer, hinteres, hinter-, hinterrad-, heck, heck-, hr = rear
	vorderrad = front wheel
	hinterrad = rear wheel
	rechts = right
	fahrrad-, rad-, laufrad-, velo-, bike- =
	ersatz, ersatz-, reserve, reserve- = spare
	paar = pair
	satz, satz- = set
	fur, zum, zur = for
	mit, inkl, inklusive = with
	ohne = without
	und = and
	am, auf = on
	von, vom, des = of
German: frame
	rahmen, rahmenset, fahrradrahmen = frame
	hinterbau, schwinge = swingarm
	steuersatz, steuerlager, lenkkopflager, lenkungslager = headset
	steuerrohrspacer, lenkkopfspacer = headset spacers
	steckachse = through axle
	steckachsen = through axles
	schnellspanner = quick release
	achse = axle
	achsen = axles
	achsmutter, achsmuttern = axle nuts
	sattelklemme, sattelklemmung, sattelschelle, sattelrohrklemme, sattelrohrschelle, sattelstutzenklemme, sattelstutzklemme = seat clamp
	ausfallende, ausfallenden = drop outs
	schaltauge = derailleur hanger
	schraube, schrauben, kleinteil, kleinteile = bolts hardware
	drehmomentstutze = torque support
German: fork and shock
	gabel, fahrradgabel = fork
	federgabel, teleskopgabel = suspension fork
	starrgabel, starre gabel = rigid fork
	dampfer, federbein, hinterbaudampfer = rear shock
	umlenkhebel, wippe = links
German: wheels
	rad, laufrad = wheel
	rader, laufrader, laufradsatz, radsatz, lrs = wheel pair
	felge = rim
	felgen, felgen- = rims
	nabe = hub
	naben, naben- = hubs
	speiche, speichen, nippel, speichennippel, speichensatz = spokes
	reifen, mantel, faltreifen, drahtreifen, decke = tyre
	schlauch = inner tube
	schlauche = inner tubes
	felgenband, felgenbander, tubelessband = rim tape
	ventil, ventile, tubelessventil, tubelessventile = valve
	dichtmilch, dichtmittel, dichtflussigkeit, reifendichtmittel, reifenmilch = sealant
German: drivetrain
	kurbel, kurbeln, kurbelgarnitur, kurbelsatz, tretkurbel, tretkurbeln, kurbelset = cranks
	kurbelarm, kurbelarme = crank arms
	innenlager, tretlager = bottom bracket
	kettenblatt, kettenblatter = chainring
	kassette, zahnkranz, ritzelpaket, zahnkranzkassette, schraubkranz = cassette
	ritzel = cog
	kette, antriebskette = chain
	zahnriemen, riemen, antriebsriemen = belt
	riemenscheibe, riemenrad = pulley belt
	riemenscheiben = pulley belt
	kettenspanner = chain tensioner
	riemenspanner = belt tensioner
	schaltwerk = rear derailleur
	umwerfer = front derailleur
	schalthebel, schaltgriff, schaltgriffe, daumenschalter, rapidfire = shift lever
	drehgriff, schaltdrehgriff, drehgriffschalter, drehschaltgriff = twist shifter
	schaltzug, schaltzuge, schaltkabel, schaltseil, zughulle, aussenhulle, schaltzughulle = gear cable
	zug, zuge, bowdenzug = cable
	nabenschaltung, getriebenabe, schaltnabe, nabengetriebe = gear hub
	tretlagergetriebe, tretlagerschaltung, getriebe, kurbelgetriebe, getriebebox = crank gearbox
	pedale, pedal = pedal
	plattformpedal, plattformpedale = pedal flat
	klickpedal, klickpedale, systempedal, systempedale = pedal clipless
	kettenschutz, kettenschutzring, kettenschutzer = chain guard
	kettenkasten = chain case
	kettenfuhrung = chain guide
	unterfahrschutz = skid plate
German: brakes
	bremse, scheibenbremse, hydraulikbremse, bremssattel, bremszange = brake caliper
	bremsen, scheibenbremsen, bremssattel und belage, bremszangen = brake calipers
	brems- = brake
	felgenbremse = rim brake
	felgenbremsen = rim brakes
	bremsscheibe = brake rotor
	bremsscheiben = brake rotors
	bremsadapter = brake adapter
	bremshebel, bremsgriff, bremsgriffe = brake lever
	bremsleitung, bremsschlauch = brake hose
	bremsleitungen = brake hoses
	bremszug, bremszuge, bremskabel = brake cable
	bremsbelag, bremsbelage, belage = brake pads
German: cockpit and seat
	lenker, lenker-, fahrradlenker = handlebar
	vorbau = stem
	griff, griffe, lenkergriff, lenkergriffe = grips
	lenkerband = bar tape
	lenkerhornchen, hornchen, lenkerhorner = bar ends
	lenkeraufsatz, auflieger = extension bars
	klingel, glocke, fahrradglocke = bell
	ruckspiegel, spiegel = mirror
	sattel = saddle
	sattelstutze, sattelkerze = seatpost
	variostutze, teleskopstutze, teleskopsattelstutze, absenkbare sattelstutze = dropper seatpost
	federsattelstutze, gefederte sattelstutze, federstutze = seatpost suspension
German: electrics
	nabendynamo = dynamo hub
	reifendynamo, seitenlaufer, seitenlauferdynamo = tyre dynamo
	dynamo = dynamo
	licht, lampe, leuchte, beleuchtung, lichtanlage = light
	scheinwerfer, frontlicht, vorderlicht, frontlampe, frontscheinwerfer = front light
	rucklicht, schlusslicht, hecklicht, ruckleuchte, schlussleuchte = rear light
	ladegerat, lader, laderegler = charger
	akku, pufferakku, batterie = battery
	tacho, tachometer, fahrradcomputer, radcomputer, navi, navigationsgerat = bike computer
	handyhalter, handyhalterung = phone mount
	handy = phone
	lichtkabel = light cables
German: racks and what is fixed
	gepacktrager, trager = rack
	hecktrager, heckgepacktrager, hintergepacktrager = rear rack
	fronttrager, frontgepacktrager, vorderradtrager, vorderradgepacktrager = front rack
	schutzblech, radschutz, radschutzer, kotflugel, spritzschutz = mudguard
	schutzbleche = mudguards
	schutzblechset, schutzblechsatz = mudguard set
	flaschenhalter, flaschenkafig, trinkflaschenhalter = bottle cage
	stander, seitenstander, hinterbaustander, fahrradstander = side stand
	zweibeinstander, doppelstander = two legged stand
	schloss, fahrradschloss = lock
	faltschloss = folding lock
	bugelschloss = u lock
	kabelschloss = cable lock
	kettenschloss = chain lock
	rahmenschloss = ring lock frame
German: bags and what is carried
	gepacktasche, gepacktragertasche, packtasche, packtaschen, gepacktaschen, seitentasche = pannier
	hinterradtasche, hinterradtaschen = rear pannier
	vorderradtasche, vorderradtaschen, lowridertasche, lowridertaschen = front pannier
	lenkertasche = handlebar bag
	lenkerrolle = handlebar roll
	rahmentasche = frame bag
	satteltasche = saddle bag
	oberrohrtasche = top tube bag
	tasche, taschen, beutel = bag
	packsack = dry bag
	flasche, trinkflasche, wasserflasche = bottle
	wasser, trinkwasser = water
	werkzeug, werkzeuge, miniwerkzeug, multiwerkzeug, bordwerkzeug = tool
	pumpe, luftpumpe = pump
	flickzeug = patch kit
	reifenheber = tyre levers
	zelt = tent
	schlafsack = sleeping bag
	isomatte, schlafmatte = sleeping mat
	kocher = stove
	kleidung = clothes

French: where
	avant, av = front
	arriere, ar, arr = rear
	gauche = left
	droit, droite = right
	de rechange, rechange, de secours = spare
	paire = pair
	jeu = set
	de, du, des = of
	pour = for
	avec = with
	sans = without
	et = and
	au, aux, sur = on
	le, la, les, un, une =
French: frame
	cadre = frame
	bras oscillant, triangle arriere = swingarm
	jeu de direction = headset
	entretoise, entretoise de direction = headset spacers
	axe traversant = through axle
	axe de roue, axe = axle
	axe avant = front axle
	axe arriere = rear axle
	blocage rapide, serrage rapide, blocage = quick release
	collier de selle, collier de tige de selle, collier = seat clamp
	patte de derailleur = derailleur hanger
	vis, visserie = bolts hardware
French: fork and shock
	fourche = fork
	fourche suspendue, fourche telescopique, fourche a suspension = suspension fork
	fourche rigide = rigid fork
	amortisseur = rear shock
	biellette = links
French: wheels
	roue = wheel
	roues, paire de roues = wheel pair
	jante = rim
	moyeu = hub
	moyeux = hubs
	rayon, tete de rayon, ecrou de rayon = spokes
	pneu, pneumatique = tyre
	pneus, pneumatiques = tyres
	chambre a air, chambre = inner tube
	chambres a air, chambres = inner tubes
	fond de jante, ruban tubeless = rim tape
	liquide preventif, preventif = sealant
French: drivetrain
	pedalier, manivelle = cranks
	boitier de pedalier, axe de pedalier, boitier pedalier = bottom bracket
	plateau, plateaux = chainring
	roue libre = cassette
	pignon = cog
	chaine = chain
	courroie = belt
	poulie = pulley belt
	tendeur, tendeur de chaine = chain tensioner
	tendeur de courroie = belt tensioner
	derailleur avant = front derailleur
	derailleur arriere = rear derailleur
	manette, manette de vitesse, manette de derailleur, commande de vitesse, levier de vitesse = shift lever
	poignee tournante = twist shifter
	cable de derailleur, cable de vitesse, gaine de derailleur, gaine = gear cable
	moyeu a vitesses, moyeu a vitesses integrees, moyeu vitesses, vitesses dans le moyeu, vitesses integrees = gear hub
	boite de vitesses, boite vitesses, boite de pedalier = crank gearbox
	pedale = pedal
	pedale plate = pedal flat
	pedale automatique = pedal clipless
	protege chaine = chain guard
	carter, carter de chaine = chain case
	guide chaine = chain guide
French: brakes
	frein, frein a disque, frein hydraulique, etrier, etrier de frein = brake caliper
	frein sur jante, frein a patins = rim brake
	disque, disque de frein = brake rotor
	levier de frein, manette de frein, poignee de frein = brake lever
	durite, durite de frein = brake hose
	cable de frein, gaine de frein = brake cable
	plaquette, plaquette de frein, patin, patin de frein = brake pads
French: cockpit and seat
	guidon, cintre = handlebar
	potence = stem
	poignee = grips
	guidoline, ruban de guidon, ruban de cintre = bar tape
	embout de guidon, corne, corne de guidon, corne de vache = bar ends
	prolongateur = extension bars
	sonnette = bell
	retroviseur = mirror
	selle = saddle
	tige de selle, tige = seatpost
	tige de selle telescopique, tige telescopique = dropper seatpost
	tige de selle suspendue, tige suspendue = seatpost suspension
French: electrics
	moyeu dynamo = dynamo hub
	phare, feu avant, eclairage avant, lampe avant = front light
	feu arriere, eclairage arriere, lampe arriere, feu rouge = rear light
	feu, feux, eclairage = light
	chargeur = charger
	batterie = battery
	compteur, gps = bike computer
	support de telephone, support telephone = phone mount
	telephone = phone
French: racks and what is fixed
	porte bagages, porte bagage = rack
	garde boue, gardes boue = mudguard
	jeu de garde boue, paire de garde boue = mudguard set
	porte bidon, porte bidons, porte gourde = bottle cage
	bequille = side stand
	bequille double = two legged stand
	antivol = lock
	antivol pliant = folding lock
	antivol u = u lock
French: bags and what is carried
	sacoche = pannier
	sacoche de guidon = handlebar bag
	sacoche de cadre = frame bag
	sacoche de selle = saddle bag
	sac = bag
	bidon, gourde = bottle
	eau = water
	outil, outils = tool
	pompe = pump
	demonte pneu = tyre levers
	kit de reparation = patch kit
	tente = tent
	sac de couchage = sleeping bag
	matelas = sleeping mat
	rechaud = stove
	vetement, vetements = clothes
`
