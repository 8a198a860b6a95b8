package document

// Kind is a sort of part, and the group that its mass is counted under.
type Kind struct {
	ID    string
	Group string
}

// Groups are the headings of the parts list, in its order.
var Groups = []string{
	"frame", "suspension", "wheels", "drivetrain", "brakes", "cockpit", "seat", "electrics", "racks", "bags", "carried", "other",
}

// Kinds are the sorts of parts, in the order of their groups. To add a kind,
// add a line here and its label to data/words/en.json.
var Kinds = []Kind{
	{"frame", "frame"}, {"frame-mount", "frame"}, {"headset", "frame"}, {"axle", "frame"}, {"seat-clamp", "frame"}, {"small-parts", "frame"},
	{"fork", "suspension"}, {"fork-rigid", "suspension"}, {"shock", "suspension"}, {"link", "suspension"},
	{"rim", "wheels"}, {"hub", "wheels"}, {"spokes", "wheels"}, {"tyre", "wheels"}, {"tube", "wheels"}, {"sealant", "wheels"}, {"rim-tape", "wheels"}, {"wheel", "wheels"},
	{"crank", "drivetrain"}, {"bottom-bracket", "drivetrain"}, {"chainring", "drivetrain"}, {"cassette", "drivetrain"}, {"cog", "drivetrain"},
	{"chain", "drivetrain"}, {"belt", "drivetrain"}, {"tensioner", "drivetrain"}, {"derailleur", "drivetrain"}, {"front-derailleur", "drivetrain"},
	{"shifter", "drivetrain"}, {"cable", "drivetrain"}, {"gear-hub", "drivetrain"}, {"crank-gearbox", "drivetrain"}, {"pedal", "drivetrain"}, {"guard", "drivetrain"},
	{"brake", "brakes"}, {"rotor", "brakes"}, {"brake-lever", "brakes"}, {"hose", "brakes"},
	{"bar", "cockpit"}, {"stem", "cockpit"}, {"grip", "cockpit"}, {"bar-end", "cockpit"}, {"bell", "cockpit"}, {"mirror", "cockpit"},
	{"saddle", "seat"}, {"seatpost", "seat"},
	{"dynamo", "electrics"}, {"light", "electrics"}, {"charger", "electrics"}, {"computer", "electrics"}, {"battery", "electrics"},
	{"rack", "racks"}, {"mudguard", "racks"}, {"cage", "racks"}, {"stand", "racks"}, {"lock", "racks"},
	{"pannier", "bags"}, {"bag", "bags"},
	{"bottle", "carried"}, {"water", "carried"}, {"tool", "carried"}, {"pump", "carried"}, {"spare", "carried"}, {"load", "carried"},
	{"other", "other"},
}

var kindGroup = func() map[string]string {
	m := make(map[string]string, len(Kinds))
	for _, k := range Kinds {
		m[k.ID] = k.Group
	}
	return m
}()

// KnownKind reports whether there is a kind of this name.
func KnownKind(kind string) bool {
	_, ok := kindGroup[kind]
	return ok
}

// GroupOf returns the group of a kind, "other" for one that is not known.
func GroupOf(kind string) string {
	if g, ok := kindGroup[kind]; ok {
		return g
	}
	return "other"
}
