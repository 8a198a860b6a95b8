package browsertest

import (
	"context"
	"strings"
	"time"

	"github.com/chromedp/cdproto/accessibility"
	"github.com/chromedp/cdproto/cdp"
	"github.com/chromedp/cdproto/dom"
	"github.com/chromedp/cdproto/input"
	"github.com/chromedp/cdproto/runtime"
	"github.com/chromedp/chromedp"
	"github.com/chromedp/chromedp/kb"
	"github.com/goccy/go-json"
)

// Call gives the browser one command of its protocol.
func Call[P, R any](p *Page, command cdp.Command[P, R], params P) R {
	p.tb.Helper()
	return Run(p, func(ctx context.Context, _ *chromedp.Target) (R, error) {
		return chromedp.Call(ctx, command, params)
	})
}

// Thing is something on the page that assistive technology is told of.
type Thing struct {
	p    *Page
	Role string
	Name string
	node cdp.BackendNodeID
}

// All returns the things of a role with a name; with the empty name all of the
// role.
func (p *Page) All(role, name string) []Thing {
	p.tb.Helper()
	root := Call(p, dom.GetDocument, dom.GetDocumentParams{})
	found := Call(p, accessibility.QueryAXTree, accessibility.QueryAXTreeParams{
		NodeID: root.Root.NodeID, Role: role, AccessibleName: name,
	})
	var things []Thing
	for _, n := range found.Nodes {
		if !n.Ignored && n.BackendDOMNodeID != 0 {
			things = append(things, Thing{p, role, text(n.Name), n.BackendDOMNodeID})
		}
	}
	return things
}

// text returns what a value of the accessibility tree says.
func text(v *accessibility.Value) string {
	var s string
	if v == nil || json.Unmarshal([]byte(v.Value), &s) != nil {
		return ""
	}
	return s
}

// The returns the first thing of a role with a name, and waits for it.
func (p *Page) The(role, name string) Thing {
	p.tb.Helper()
	return p.wanted(role, name, false)
}

// Like returns the first thing of a role whose name begins so, and waits for it.
func (p *Page) Like(role, begin string) Thing {
	p.tb.Helper()
	return p.wanted(role, begin, true)
}

// wanted waits for a thing: by the quick way, and after a while by the browser's
// own tree too.
func (p *Page) wanted(role, name string, begins bool) (found Thing) {
	p.tb.Helper()
	what := "there is a " + role + " named " + name
	if begins {
		what = "there is a " + role + " whose name begins with " + name
	}
	const slow = 3 * time.Second
	began := time.Now()
	p.until(what, func() (ok bool) {
		if found, ok = p.find(role, name, begins); ok || time.Since(began) < slow {
			return ok
		}
		given := name
		if begins {
			given = ""
		}
		for _, t := range p.All(role, given) {
			if strings.HasPrefix(t.Name, name) {
				found = t
				return true
			}
		}
		return false
	})
	return found
}

// Middle scrolls a thing into view and returns its middle in the window, CSS px.
func (t Thing) Middle() (x, y float64) {
	t.p.tb.Helper()
	Call(t.p, dom.ScrollIntoViewIfNeeded, dom.ScrollIntoViewIfNeededParams{BackendNodeID: t.node})
	// What stays at the window's edge lies over what scrolls below it.
	Ask[bool](t, `e => {
		const r = e.getBoundingClientRect(), over = document.elementFromPoint(r.x + r.width / 2, r.y + r.height / 2);
		if (over?.closest('sy-contents, sy-strip') && !over.contains(e) && !e.closest('sy-contents, sy-strip')) e.scrollIntoView({ block: 'center', behavior: 'instant' });
		return true;
	}`)
	quads := Call(t.p, dom.GetContentQuads, dom.GetContentQuadsParams{BackendNodeID: t.node}).Quads
	if len(quads) == 0 {
		t.p.tb.Fatalf("the %s named %q has no place in the window", t.Role, t.Name)
	}
	for i := 0; i < 8; i += 2 {
		x += quads[0][i] / 4
		y += quads[0][i+1] / 4
	}
	return x, y
}

// Click presses the pointer's button on the middle of a thing.
func (t Thing) Click() {
	t.p.tb.Helper()
	x, y := t.Middle()
	t.p.ClickAt(x, y)
}

// Ask calls a JavaScript function with the thing's element.
func Ask[T any](t Thing, function string) T {
	t.p.tb.Helper()
	object := Call(t.p, dom.ResolveNode, dom.ResolveNodeParams{BackendNodeID: t.node}).Object
	yes := true
	result := Call(t.p, runtime.CallFunctionOn, runtime.CallFunctionOnParams{
		FunctionDeclaration: "async function() { return (" + function + ")(this) }",
		ObjectID:            object.ObjectID,
		ReturnByValue:       &yes,
		AwaitPromise:        &yes,
	})
	if result.ExceptionDetails != nil {
		t.p.tb.Fatalf("asking the %s named %q: %s", t.Role, t.Name, describe(result.ExceptionDetails))
	}
	var out T
	decode(t.p.tb, []byte(result.Result.Value), &out)
	return out
}

// Text returns what a thing says.
func (t Thing) Text() string {
	t.p.tb.Helper()
	return Ask[string](t, "e => (e.innerText ?? e.textContent ?? '').trim()")
}

// Value returns what is in a field.
func (t Thing) Value() string {
	t.p.tb.Helper()
	return Ask[string](t, "e => String(e.value ?? '')")
}

// Focus gives a thing the keyboard.
func (t Thing) Focus() {
	t.p.tb.Helper()
	Call(t.p, dom.Focus, dom.FocusParams{BackendNodeID: t.node})
}

// Fill puts text into a field in place of what is there, and leaves the field
// by the Enter key. What was changed before may be rendered just then, and what is
// selected in the field with it: then it is filled again.
func (t Thing) Fill(text string) {
	t.p.tb.Helper()
	t.Focus()
	for range 3 {
		Ask[bool](t, "e => { e.select?.(); return true }")
		Call(t.p, input.InsertText, input.InsertTextParams{Text: text})
		if t.Value() == text {
			break
		}
	}
	t.p.Key(kb.Enter)
}

// Key presses and releases a key; see package kb for names.
func (p *Page) Key(keys string, modifiers ...kb.Modifier) {
	p.tb.Helper()
	Do(p, chromedp.KeyEvent(keys, chromedp.KeyModifiers(modifiers...)))
}

// Mouse sends one event of the pointer; held says whether the left button is down.
func (p *Page) Mouse(kind input.DispatchMouseEventType, x, y float64, held bool) {
	p.tb.Helper()
	e := input.DispatchMouseEventParams{Type: kind, X: x, Y: y, Button: input.MouseButtonNone}
	if kind != input.DispatchMouseEventTypeMouseMoved {
		e.Button, e.ClickCount = input.MouseButtonLeft, 1
	}
	if held {
		e.Buttons = 1
		e.Button = input.MouseButtonLeft
	}
	Call(p, input.DispatchMouseEvent, e)
}

// Hover moves the pointer.
func (p *Page) Hover(x, y float64) {
	p.tb.Helper()
	p.Mouse(input.DispatchMouseEventTypeMouseMoved, x, y, false)
}

// ClickAt clicks at a place in the window.
func (p *Page) ClickAt(x, y float64) {
	p.tb.Helper()
	p.Hover(x, y)
	p.Mouse(input.DispatchMouseEventTypeMousePressed, x, y, true)
	p.Mouse(input.DispatchMouseEventTypeMouseReleased, x, y, false)
}

// Drag drags from one place in the window to another, in steps.
func (p *Page) Drag(x0, y0, x1, y1 float64) {
	p.tb.Helper()
	p.Hover(x0, y0)
	p.Mouse(input.DispatchMouseEventTypeMousePressed, x0, y0, true)
	const steps = 8
	for i := 1; i <= steps; i++ {
		f := float64(i) / steps
		p.Mouse(input.DispatchMouseEventTypeMouseMoved, x0+(x1-x0)*f, y0+(y1-y0)*f, true)
	}
	p.Mouse(input.DispatchMouseEventTypeMouseReleased, x1, y1, false)
}

// Touch puts fingers on the screen, moves them, or lifts them (none).
func (p *Page) Touch(kind input.DispatchTouchEventType, fingers ...[2]float64) {
	p.tb.Helper()
	var points []*input.TouchPoint
	for i, f := range fingers {
		id := float64(i)
		points = append(points, &input.TouchPoint{X: f[0], Y: f[1], ID: &id})
	}
	Call(p, input.DispatchTouchEvent, input.DispatchTouchEventParams{Type: kind, TouchPoints: points})
}

// Tap touches a place for a moment.
func (p *Page) Tap(x, y float64) {
	p.tb.Helper()
	p.Touch(input.DispatchTouchEventTypeTouchStart, [2]float64{x, y})
	p.Touch(input.DispatchTouchEventTypeTouchEnd)
}

// Wheel turns the wheel, with keys held down or without.
func (p *Page) Wheel(x, y, delta float64, held ...kb.Modifier) {
	p.tb.Helper()
	var keys kb.Modifier
	for _, k := range held {
		keys |= k
	}
	Call(p, input.DispatchMouseEvent, input.DispatchMouseEventParams{
		Type: input.DispatchMouseEventTypeMouseWheel, X: x, Y: y, DeltaX: 1e-6, DeltaY: delta, Modifiers: int64(keys), // a delta of 0 would not be sent
	})
}
