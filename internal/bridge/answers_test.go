package bridge

import (
	"maps"
	"os"
	"reflect"
	"slices"
	"strings"
	"testing"

	"steelyard/internal/document"
	"steelyard/internal/newbike"
	"steelyard/internal/onscale"
	"steelyard/internal/parts"
	"steelyard/internal/partslist"
	"steelyard/internal/photograph"
	"steelyard/internal/report"
	"steelyard/internal/rooms"
	"steelyard/internal/schematest"
	"steelyard/internal/stage"
	"steelyard/internal/tables"
)

// told are the types that answers of JSON are written from, by function. What
// is not here answers with text.
var told = map[string]reflect.Type{
	"evaluate":    reflect.TypeFor[report.Report](),
	"open":        reflect.TypeFor[opened](),
	"blank":       reflect.TypeFor[document.Document](),
	"demo":        reflect.TypeFor[document.Document](),
	"catalogue":   reflect.TypeFor[[]parts.Entry](),
	"words":       reflect.TypeFor[map[string]string](),
	"stations":    reflect.TypeFor[[]station](),
	"kinds":       reflect.TypeFor[[]kind](),
	"goods":       reflect.TypeFor[templates](),
	"find":        reflect.TypeFor[found](),
	"findParts":   reflect.TypeFor[[]string](),
	"enter":       reflect.TypeFor[entered](),
	"copyLoad":    reflect.TypeFor[opened](),
	"sets":        reflect.TypeFor[[]setLine](),
	"change":      reflect.TypeFor[changed](),
	"shared":      reflect.TypeFor[sharing](),
	"weighNext":   reflect.TypeFor[onscale.Plan](),
	"weighTaken":  reflect.TypeFor[onscale.Taken](),
	"builds":      reflect.TypeFor[report.SideBySide](),
	"buildsParts": reflect.TypeFor[tables.PartsSideBySide](),
	"steering":    reflect.TypeFor[rooms.Steering](),
	"placements":  reflect.TypeFor[rooms.Placements](),
	"clearances":  reflect.TypeFor[rooms.Clearances](),

	"gears":     reflect.TypeFor[rooms.Gears](),
	"climb":     reflect.TypeFor[rooms.Climb](),
	"stretches": reflect.TypeFor[rooms.Stretches](),

	"newRider":       reflect.TypeFor[document.Rider](),
	"newBike":        reflect.TypeFor[newBike](),
	"readFrameTable": reflect.TypeFor[frameTable](),
	"newIDs":         reflect.TypeFor[[]string](),
	"halfWidth":      reflect.TypeFor[number](),
	"partFromEntry":  reflect.TypeFor[document.Part](),
	"bagFromEntry":   reflect.TypeFor[document.Bag](),
	"goodFromEntry":  reflect.TypeFor[document.Good](),
	"partFromWords":  reflect.TypeFor[document.Part](),
	"bagFromWords":   reflect.TypeFor[document.Bag](),
	"goodFromWords":  reflect.TypeFor[document.Good](),

	"weighIn":      reflect.TypeFor[weighed](),
	"packStart":    reflect.TypeFor[packed](),
	"packRun":      reflect.TypeFor[packed](),
	"packApply":    reflect.TypeFor[opened](),
	"packStop":     reflect.TypeFor[packed](),
	"decodeLink":   reflect.TypeFor[opened](),
	"readPartsCSV": reflect.TypeFor[partslist.CSVResult](),
	"notes":        reflect.TypeFor[[]string](),
	"provenance":   reflect.TypeFor[[]string](),
	"parseMass":    reflect.TypeFor[number](),
	"parseLength":  reflect.TypeFor[number](),
	"pointer":      reflect.TypeFor[stage.Intent](),

	"photograph":  reflect.TypeFor[photograph.Reading](),
	"pictureFile": reflect.TypeFor[photograph.Size](),

	"road":       reflect.TypeFor[rooms.Road](),
	"roadCurves": reflect.TypeFor[rooms.RoadCurves](),
}

// structured are the types that arguments of JSON are read into, by schema.
var structured = map[string]reflect.Type{
	"document":                    reflect.TypeFor[document.Document](),
	"catalogue#wanted":            reflect.TypeFor[wanted](),
	"catalogue#typedIn":           reflect.TypeFor[typedIn](),
	"bridge#words":                reflect.TypeFor[map[string]string](),
	"picture":                     reflect.TypeFor[View](),
	"photograph":                  reflect.TypeFor[photograph.Photograph](),
	"sets#changing":               reflect.TypeFor[changing](),
	"frametable#frameTableWanted": reflect.TypeFor[frameTableWanted](),
	"newbike#newBikeChoice":       reflect.TypeFor[newbike.Choice](),
	"onscale#reading":             reflect.TypeFor[onscale.Reading](),
	"packing#options":             reflect.TypeFor[packOptions](),
	"partslist#options":           reflect.TypeFor[partslist.CSVOptions](),
	"stretches#track":             reflect.TypeFor[rooms.Track](),
	"picture#pointer":             reflect.TypeFor[stage.Event](),
	"picture#drawing":             nil, // those keys of a View that a drawing looks at
}

// bridged are all functions of a stage and of its session.
func bridged(s *Stage) map[string]Function {
	all := s.Session.Functions()
	maps.Copy(all, s.Functions())
	return all
}

type object = map[string]any

// Every function has a schema, and nothing else has one.
func TestSchemaNamesTheFunctions(t *testing.T) {
	properties := schematest.Value(t, "bridge", "properties").(object)
	if got, want := slices.Sorted(maps.Keys(properties)), slices.Sorted(maps.Keys(bridged(&Stage{Session: new(Session)}))); !slices.Equal(got, want) {
		t.Errorf("the schema has %v, the bridge %v", got, want)
	}
	for name := range told {
		if properties[name] == nil {
			t.Errorf("there is no function %s", name)
		}
	}
}

func TestSchemaFollowsTheTypesOfAnswers(t *testing.T) {
	schematest.Follow(t, "bridge#failure", reflect.TypeFor[failure]())
	for name := range schematest.Value(t, "bridge", "properties").(object) {
		answer := "bridge#/properties/" + name + "/properties/answer"
		switch typ := told[name]; {
		case typ != nil:
			schematest.Follow(t, answer, typ)
		default:
			schematest.Follow(t, answer, reflect.TypeFor[string]())
		}
	}
}

func TestSchemaFollowsTheTypesOfArguments(t *testing.T) {
	used := map[string]bool{}
	for name, f := range schematest.Value(t, "bridge", "properties").(object) {
		arguments, _ := f.(object)["properties"].(object)["arguments"].(object)["prefixItems"].([]any)
		for _, a := range arguments {
			content, ok := a.(object)["contentSchema"].(object)
			if !ok {
				continue
			}
			schema := schematest.Name(content["$ref"].(string), "bridge")
			typ, ok := structured[schema]
			if !ok {
				t.Errorf("%s: no type is known to be read from an argument of the schema %s", name, schema)
			}
			used[schema] = true
			if typ != nil {
				schematest.FollowArgument(t, schema, typ)
			}
		}
	}
	if len(used) != len(structured) {
		t.Errorf("of %v only %v are arguments", slices.Sorted(maps.Keys(structured)), slices.Sorted(maps.Keys(used)))
	}
	// A drawing takes of a view what it looks at.
	view := schematest.Value(t, "picture", "properties").(object)
	for key, p := range schematest.Value(t, "picture#drawing", "properties").(object) {
		if !reflect.DeepEqual(view[key], p) {
			t.Errorf("%s of a drawing is not that of a view", key)
		}
	}
}

// Real answers, of every function and good and bad, fit their schema.
func TestAnswersFitTheSchema(t *testing.T) {
	s := &Stage{Session: new(Session)}
	functions := bridged(s)
	demo := functions["demo"]()
	d, problems := document.Open([]byte(demo))
	if d == nil {
		t.Fatal(problems)
	}
	build, load, weighIn := d.Builds[0].ID, d.Loads[0].ID, d.WeighIns[0].ID
	tight := *d
	tight.Loads = slices.Clone(d.Loads)
	tight.Loads[0].Bags = slices.Clone(d.Loads[0].Bags)
	for i := range tight.Loads[0].Bags {
		tight.Loads[0].Bags[i].Volume = 1
	}
	small, err := document.WriteCompact(&tight)
	if err != nil {
		t.Fatal(err)
	}
	days, err := os.ReadFile("../../testdata/documents/earlier/1-days.json")
	if err != nil {
		t.Fatal(err)
	}
	ridden := string(days)
	const list = "name,mass\nSaddle,300 g\n\"Bar\",x\nStem,-1\n"
	const view = `{"build":"gearbox","ghost":"gearhub","units":{"mass":"g","length":"mm"}}`

	const photographed = `{"id":"k3","width":2400,"height":1600,"scale":"wheelbase","wheelbase_mm":1100,"distance_m":5,"within_mm":3,"marks":[
		{"of":"rear_axle","x":600,"y":1000},{"of":"front_axle","x":1800,"y":1000},{"of":"bottom_bracket","x":1080,"y":1080},
		{"of":"head_top","x":1520,"y":420},{"of":"head_bottom","x":1570,"y":580},{"of":"saddle","x":830,"y":330},{"of":"tread","x":600,"y":610}]}`

	failure := schematest.Written(t, "bridge#failure")
	asked := map[string]bool{}
	for _, c := range []struct {
		name      string
		arguments []string
	}{
		{"evaluate", []string{demo}}, {"evaluate", []string{"{"}}, {"evaluate", []string{functions["blank"]()}},
		{"open", []string{demo}}, {"open", []string{"{"}}, {"blank", nil}, {"demo", nil}, {"catalogue", nil}, {"words", nil},
		{"speak", []string{`{"figure.total":"total"}`}}, {"speak", []string{"{"}}, {"speak", []string{""}},
		{"stations", nil}, {"kinds", nil}, {"goods", nil}, {"find", []string{"chain 300 g", `{"of":"parts"}`}}, {"find", []string{"tent", `{"of":"goods"}`}}, {"find", []string{"", "{"}},
		{"enter", []string{demo, build, `{"entry":"saddle-leather","typed":"saddle 5 g"}`}}, {"enter", []string{demo, build, `{"entry":"","typed":"bell 42 g"}`}},
		{"enter", []string{demo, "?", "{}"}}, {"enter", []string{demo, build, "{"}}, {"enter", []string{demo, build, `{"entry":"?","typed":""}`}}, {"enter", []string{"{"}},
		{"findParts", []string{demo, build, "chain"}}, {"findParts", []string{demo, "?", ""}}, {"copyLoad", []string{demo, load, "copy"}}, {"copyLoad", []string{demo, "?", ""}},
		{"sets", []string{demo, build}}, {"sets", []string{demo, "?"}}, {"shared", []string{demo}}, {"shared", []string{"{"}},
		{"weighNext", []string{demo, build, "1"}}, {"weighNext", []string{demo, "?", "1"}}, {"weighNext", []string{demo, build, "?"}}, {"weighNext", []string{"{"}},
		{"weighTaken", []string{demo, build, `{"part":"chain","typed":"3000 g","unit":"g","step_g":1,"tare_g":40,"one":false}`}}, {"weighTaken", []string{demo, build, `{"part":"chain","typed":"30","unit":"g","step_g":1,"tare_g":40,"one":false}`}},
		{"weighTaken", []string{demo, build, `{"part":"?"}`}}, {"weighTaken", []string{demo, build, "{"}}, {"weighTaken", []string{demo, "?", ""}}, {"weighTaken", []string{"{"}},
		{"placements", []string{demo}}, {"placements", []string{strings.Replace(demo, `"state": "ready"`, `"state": "ridden"`, 1)}},
		{"frameBag", []string{demo, build}}, {"frameBag", []string{demo, "?"}}, {"frameBag", []string{"{"}},
		{"clearances", []string{demo}}, {"clearances", []string{"{"}},
		{"steering", []string{demo}}, {"steering", []string{"{"}}, {"steering", []string{functions["blank"]()}},
		{"gears", []string{demo}}, {"gears", []string{"{"}}, {"gears", []string{functions["blank"]()}}, {"gears", []string{ridden}},
		{"climb", []string{demo}}, {"climb", []string{"{"}}, {"climb", []string{functions["blank"]()}}, {"climb", []string{ridden}},
		{"stretches", []string{`{"points":[[0,100],[1000,150],[2000,120]],"surface":"gravel"}`}}, {"stretches", []string{`{"places":[[47,8,500],[47.01,8,560],[47.02,8.01,500]]}`}}, {"stretches", []string{"{"}}, {"stretches", []string{`{"points":[[0,0]]}`}},
		{"buildsParts", []string{demo}}, {"buildsParts", []string{"{"}}, {"buildsParts", []string{functions["blank"]()}},
		{"road", []string{demo}}, {"road", []string{"{"}}, {"road", []string{functions["blank"]()}}, {"road", []string{rough(d, 2)}}, {"road", []string{rough(d, 40)}},
		{"roadCurves", []string{demo}}, {"roadCurves", []string{"{"}}, {"roadCurves", []string{functions["blank"]()}}, {"roadCurves", []string{rough(d, 2)}}, {"roadCurves", []string{rough(d, 0)}},
		{"builds", []string{demo}}, {"builds", []string{"{"}}, {"builds", []string{functions["blank"]()}}, {"buildsCSV", []string{demo, "", "today"}}, {"buildsMarkdown", []string{demo}},
		{"change", []string{demo, `{"build":"` + build + `","set":"gear-hub-belt","copy_as":"With a belt","keep":["chain"],"skip":[0]}`}},
		{"change", []string{demo, `{"build":"` + build + `","set":"?"}`}}, {"change", []string{demo, `{"build":"?","set":"brakes-rim"}`}}, {"change", []string{demo, "{"}},
		{"weighIn", []string{demo, weighIn}}, {"weighIn", []string{demo, "?"}}, {"weighInDrawing", []string{demo, weighIn, ""}},
		{"packStart", []string{string(small), `{"load":"` + load + `"}`}}, {"packRun", []string{"100"}},
		{"packStart", []string{demo, `{"build":"` + build + `","load":"` + load + `","tolerance":5}`}}, {"packStart", []string{demo, `{"load":"?"}`}},
		{"packStart", []string{demo, `{"load":"` + load + `","tolerance":5}`}}, {"packRun", []string{"2000"}}, {"packApply", []string{demo}}, {"packRun", []string{"?"}}, {"packStop", nil}, {"packStop", nil},
		{"readFrameTable", []string{demo, `{"build":"` + build + `","text":"Stack 620\nWheelbase 1000\nReach 1 2"}`}}, {"readFrameTable", []string{demo, `{"build":"` + build + `","text":"Stack 620\nReach 440\nSeat angle 95\nWheelbase 1000\nFoo 3","size":0,"skip":["frame.reach_mm"]}`}}, {"readFrameTable", []string{demo, `{"build":"?"}`}}, {"readFrameTable", []string{demo, "{"}}, {"readFrameTable", []string{"{"}},
		{"newBike", []string{`{}`}}, {"newBike", []string{`{"frame":"full","size":"large","sets":{"drivetrain":"gear-hub-belt","racks":"racks-swingarm"}}`}}, {"newBike", []string{"{"}},
		{"newRider", nil}, {"newIDs", []string{demo, "bag", "2"}}, {"newIDs", []string{demo, "?", "2"}}, {"halfWidth", []string{"stated", "500"}}, {"halfWidth", []string{"stated", "?"}},
		{"partFromEntry", []string{parts.Catalogue()[0].ID}}, {"bagFromEntry", []string{parts.Bags()[0].ID}}, {"goodFromEntry", []string{parts.Goods()[0].ID}}, {"goodFromEntry", []string{"?"}},
		{"partFromWords", []string{"bell", "42"}}, {"bagFromWords", []string{"sack", "300"}}, {"goodFromWords", []string{"book", "300"}},
		{"photograph", []string{demo, build, photographed}}, {"photograph", []string{demo, build, "{}"}}, {"photograph", []string{demo, build, "{"}}, {"photograph", []string{"{"}},
		{"pictureFile", []string{"\x89PNG\r\n\x1a\n\x00\x00\x00\rIHDR\x00\x00\x04\x00\x00\x00\x03\x00", "1000"}}, {"pictureFile", []string{"GIF", "3"}}, {"pictureFile", []string{"GIF", "300000000"}},
		{"show", []string{demo, `{"build":"` + build + `","photograph":` + photographed + `}`}}, {"picture", nil}, {"backdrop", nil},
		{"fileText", []string{demo}}, {"fileText", []string{"{"}},
		{"encodeLink", []string{demo}}, {"encodeLink", []string{"{"}}, {"decodeLink", []string{functions["encodeLink"](demo)}}, {"decodeLink", []string{"?"}},
		{"readPartsCSV", []string{list, ""}}, {"readPartsCSV", []string{list, `{"columns":{"name":0,"mass":1},"mass_unit":"kg","taken":["p1"]}`}}, {"readPartsCSV", []string{"name,mass\nRim,0.5\nHub,0.4\nTotal,0.9\nXyz,0.1\n", `{"ends":{"2":"rear"},"sums":[4],"as_is":false}`}}, {"readPartsCSV", []string{"", "{"}}, {"readPartsCSV", []string{"", ""}},
		{"partsCSV", []string{demo, build}}, {"partsMarkdown", []string{demo, build, "", "today"}}, {"partsCSV", []string{demo, "?"}},
		{"luggageCSV", []string{demo, load}}, {"luggageMarkdown", []string{demo, load}},
		{"figuresCSV", []string{demo}}, {"figuresMarkdown", []string{demo}}, {"differenceCSV", []string{demo}}, {"differenceMarkdown", []string{demo}},
		{"statesCSV", []string{demo}}, {"statesMarkdown", []string{demo}}, {"provenance", []string{demo, "today"}}, {"notes", []string{demo, "today"}},
		{"parseMass", []string{"1 kg", "g"}}, {"parseMass", []string{"?", "g"}}, {"parseLength", []string{"1 in", "mm"}},
		{"svg", []string{demo, view}}, {"svg", []string{demo, "{"}}, {"svg", []string{demo, `{"row":["gearbox","gearhub"]}`}}, {"svg", []string{demo, `{"row":["?"]}`}}, {"version", nil},
		{"show", []string{demo, view}}, {"picture", nil}, {"camera", []string{"fit"}},
		{"pointer", []string{`{"type":"move","x":600,"y":400,"kind":"mouse"}`}}, {"pointer", []string{"{"}},
	} {
		text := functions[c.name](c.arguments...)
		asked[c.name] = true
		if strings.HasPrefix(text, `{"problem"`) {
			if err := schematest.Validate(failure, []byte(text)); err != nil {
				t.Errorf("%s: %v", c.name, err)
			}
			continue
		}
		if told[c.name] == nil {
			continue
		}
		if err := schematest.Validate(schematest.Written(t, "bridge#/properties/"+c.name+"/properties/answer"), []byte(text)); err != nil {
			t.Errorf("%s: %v\n%.300s", c.name, err, text)
		}
	}
	for name := range functions {
		if !asked[name] {
			t.Errorf("%s was not asked", name)
		}
	}
}

// rough is a document ridden standing over a hole, with a tyre of that pressure, bar.
func rough(of *document.Document, bar float64) string {
	d := *of
	d.Show.State = document.Ridden
	d.Show.Rough = &document.Rough{Class: "D", Rider: "standing", Obstacle: &document.Obstacle{Form: "hole", Height: 50, Length: 500}}
	d.Builds = slices.Clone(d.Builds)
	d.Builds[0].Setup = &document.Setup{Rear: &document.EndSetup{Pressure: &bar}}
	text, err := document.WriteCompact(&d)
	if err != nil {
		panic(err)
	}
	return string(text)
}

// A spot on the canvas that can be dragged gives every sort of intent.
func TestIntentsFitTheSchema(t *testing.T) {
	schema := schematest.Written(t, "picture#intent")
	hover, none := "p1", ""
	for _, intent := range []stage.Intent{
		{}, {Hover: &hover, Cursor: "grab"}, {Select: &none, Redraw: true}, {Move: &stage.Move{Part: "p1", By: [3]float64{0.1, 0, -2}, Done: true}},
	} {
		if err := schematest.Validate(schema, []byte(answer(intent))); err != nil {
			t.Error(err)
		}
	}
}
