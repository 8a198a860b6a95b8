package browsertest

import (
	"fmt"

	"github.com/chromedp/cdproto/dom"
	"github.com/chromedp/cdproto/runtime"
	"github.com/goccy/go-json"
)

// finder is a script that finds what is seen of a role by what it is called. The
// browser's own tree of what assistive technology is told takes half a second to
// make for a page as long as this one, and is made anew after every change; this
// follows the same rules for what the page has (Accessible Name and Description
// Computation 1.2, 2A to 2I), and a test holds the two against each other. What has
// no word of the name in or about it is passed over first: whether a thing is seen,
// and what of its text is, takes far longer.
const finder = `((role, name, begins) => {
	const roles = {
		button: 'button, [role=button], input[type=button]',
		checkbox: 'input[type=checkbox]',
		radio: 'input[type=radio]',
		combobox: 'select, [role=combobox]',
		heading: 'h1, h2, h3, h4, h5, h6, [role=heading]',
		image: 'img, [role=img]',
		searchbox: 'input[type=search]:not([role])',
		textbox: 'input:is([type=text], [type=url], [type=email], [type=tel], :not([type])):not([role]), textarea',
	};
	const top = [...document.querySelectorAll('dialog:modal')].at(-1) ?? document;
	const seen = e => e.checkVisibility({ visibilityProperty: true }) && !e.closest('[aria-hidden=true], [inert]');
	const text = node => {
		if (node.nodeType === Node.TEXT_NODE) return node.data;
		if (node.nodeType !== Node.ELEMENT_NODE || node.matches('[aria-hidden=true], script, style')) return '';
		const style = getComputedStyle(node);
		if (style.display === 'none' || style.visibility === 'hidden') return '';
		if (node.matches('[aria-label]')) return ' ' + node.getAttribute('aria-label') + ' ';
		if (node.matches('input, select, textarea')) return '';
		const around = which => {
			// Of what is counted only the text beside the number is told.
			return (getComputedStyle(node, which).content.match(/"[^"]*"/g) ?? []).map(s => JSON.parse(s)).join('');
		};
		const inner = around('::before') + [...node.childNodes].map(text).join('') + around('::after');
		return style.display.startsWith('inline') && style.display !== 'inline-block' || style.display === 'contents' ? inner : ' ' + inner + ' ';
	};
	const tidy = s => s.replace(/\s+/g, ' ').trim();
	// A field that is asked for its labels looks through all of the page for them.
	const labels = new Map();
	for (const l of top.querySelectorAll('label')) if (l.control) labels.set(l.control, [...labels.get(l.control) ?? [], l]);
	const named = e => {
		const by = e.getAttribute('aria-labelledby');
		if (by) return tidy(by.split(/\s+/).map(id => document.getElementById(id)).filter(Boolean).map(text).join(' '));
		if (e.getAttribute('aria-label')) return tidy(e.getAttribute('aria-label'));
		if (labels.has(e)) return tidy(labels.get(e).map(text).join(' '));
		const title = e.querySelector(':scope > title');
		if (title) return tidy(title.textContent);
		const own = e.matches('img') ? e.alt : e.matches('button, [role=button], h1, h2, h3, h4, h5, h6, [role=heading]') ? tidy(text(e)) : '';
		return own || tidy(e.title ?? '') || e.placeholder || '';
	};
	const all = [...top.querySelectorAll(roles[role] ?? '[role=' + role + ']')];
	if (name === null) return all.filter(seen).map(named);
	const about = e => [e.textContent, ...['aria-label', 'title', 'placeholder', 'alt'].map(a => e.getAttribute(a)),
		...(labels.get(e) ?? []).map(l => l.getAttribute('aria-label') ?? l.textContent),
		...(e.getAttribute('aria-labelledby') ?? '').split(/\s+/).map(id => document.getElementById(id)?.textContent)].join(' ');
	const words = name.match(/[\p{L}\p{N}]+/gu) ?? [];
	const may = e => { const s = about(e); return !words.length || words.some(w => s.includes(w)); };
	return all.find(e => may(e) && seen(e) && (begins ? named(e).startsWith(name) : named(e) === name)) ?? null;
})`

// finds is an expression for the first thing of a role with a name, or whose name
// begins so; null for none.
func finds(role, name string, begins bool) string {
	return fmt.Sprintf("%s(%s, %s, %v)", finder, quote(role), quote(name), begins)
}

// find returns what the finder finds, and nothing when that is nothing.
func (p *Page) find(role, name string, begins bool) (Thing, bool) {
	p.tb.Helper()
	object := Call(p, runtime.Evaluate, runtime.EvaluateParams{Expression: finds(role, name, begins)}).Result
	if object == nil || object.ObjectID == "" {
		return Thing{}, false
	}
	node := Call(p, dom.DescribeNode, dom.DescribeNodeParams{ObjectID: object.ObjectID}).Node
	return Thing{p, role, name, node.BackendNodeID}, true
}

// quote writes text as a JavaScript string.
func quote(text string) string {
	q, err := json.Marshal(text)
	if err != nil {
		panic(err)
	}
	return string(q)
}
