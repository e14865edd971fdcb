package words

// The formats that the core says, gathered from its source, held against the
// catalogs. A format is a literal handed to a parameter named format: that of
// Say and SayIn, and of every function that hands its own on to them; or it
// stands in a list or a map of Templates. What a test or a tool for one's own
// eyes says is not gathered.

import (
	"flag"
	"fmt"
	"go/ast"
	"go/parser"
	"go/token"
	"io/fs"
	"maps"
	"os"
	"path/filepath"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"testing"
	"unicode"
)

var update = flag.Bool("update", false, "sort the catalogs, add what they lack and drop what nobody says")

// complete are the languages whose catalogs hold every sentence. A language
// joins when its catalog is full, and from then on a sentence that is new or
// changed has to be put into it at once.
var complete = []Language{German, French, Spanish}

// unheard is the room whose readers of mesh files serve tests only: no user
// comes to see what they say.
const unheard = "solid"

// taker is a function with a parameter named format, by the places of it and of
// the context; -1 for none.
type taker struct{ format, context int }

// harvester gathers the formats of one directory.
type harvester struct {
	files  *token.FileSet
	takers map[string]taker // by name, with the package before it where it is another's
	found  map[string]string
	wrong  []string
}

// exported are the takers that other rooms call.
var exported = map[string]taker{"words.Say": {0, -1}, "words.SayIn": {1, 0}, "job.Faultf": {2, -1}}

// harvest is every key with the place where it is said first, and what is no
// literal.
func harvest(t *testing.T) (map[string]string, []string) {
	t.Helper()
	h := harvester{files: token.NewFileSet(), found: map[string]string{}}
	for _, root := range []string{"..", "../../wasm"} {
		err := filepath.WalkDir(root, func(path string, d fs.DirEntry, err error) error {
			if err != nil || !d.IsDir() || filepath.Base(path) == unheard {
				return err
			}
			return h.room(path)
		})
		if err != nil {
			t.Fatal(err)
		}
	}
	return h.found, h.wrong
}

func (h *harvester) room(dir string) error {
	paths, err := filepath.Glob(filepath.Join(dir, "*.go"))
	if err != nil {
		return err
	}
	var room []*ast.File
	for _, path := range paths {
		if strings.HasSuffix(path, "_test.go") {
			continue
		}
		f, err := parser.ParseFile(h.files, path, nil, 0)
		if err != nil {
			return err
		}
		room = append(room, f)
	}
	h.takers = map[string]taker{}
	for name, at := range exported {
		h.takers[name] = at
		if of, own, _ := strings.Cut(name, "."); len(room) > 0 && room[0].Name.Name == of {
			h.takers[own] = at
		}
	}
	says := slices.ContainsFunc(room, func(f *ast.File) bool {
		return slices.ContainsFunc(f.Imports, func(i *ast.ImportSpec) bool {
			return i.Path.Value == `"moldwright/core/words"` || i.Path.Value == `"moldwright/core/job"`
		}) || f.Name.Name == "words" || f.Name.Name == "job"
	})
	if !says {
		return nil
	}
	for _, f := range room {
		for _, d := range f.Decls {
			if f, ok := d.(*ast.FuncDecl); ok {
				note(h.takers, f.Name.Name, f.Type)
			}
		}
	}
	rooms := h.takers
	for _, f := range room {
		for _, d := range f.Decls {
			h.takers = maps.Clone(rooms)
			ast.Inspect(d, h.closure)
			ast.Inspect(d, h.call)
			ast.Inspect(d, h.templates)
		}
	}
	return nil
}

// note keeps a function that has a parameter named format.
func note(takers map[string]taker, name string, of *ast.FuncType) {
	at, i := taker{-1, -1}, 0
	for _, field := range of.Params.List {
		kind, text := field.Type.(*ast.Ident)
		for _, p := range field.Names {
			switch {
			case text && kind.Name == "string" && p.Name == "format":
				at.format = i
			case text && kind.Name == "string" && p.Name == "context":
				at.context = i
			}
			i++
		}
	}
	if delete(takers, name); at.format >= 0 {
		takers[name] = at
	}
}

// closure notes closures that are given a name, and functions that a function
// is handed.
func (h *harvester) closure(n ast.Node) bool {
	switch f := n.(type) {
	case *ast.AssignStmt:
		for i, right := range f.Rhs {
			if lit, ok := right.(*ast.FuncLit); ok && i < len(f.Lhs) {
				if name, ok := f.Lhs[i].(*ast.Ident); ok {
					note(h.takers, name.Name, lit.Type)
				}
			}
		}
	case *ast.Field:
		if of, ok := f.Type.(*ast.FuncType); ok {
			for _, name := range f.Names {
				note(h.takers, name.Name, of)
			}
		}
	}
	return true
}

// call gathers what a call of a taker says.
func (h *harvester) call(n ast.Node) bool {
	c, ok := n.(*ast.CallExpr)
	if !ok {
		return true
	}
	name := ""
	switch f := c.Fun.(type) {
	case *ast.Ident:
		name = f.Name
	case *ast.SelectorExpr:
		name = f.Sel.Name
		if of, ok := f.X.(*ast.Ident); ok && exported[of.Name+"."+name] != (taker{}) {
			name = of.Name + "." + name
		}
	}
	at, ok := h.takers[name]
	if !ok || at.format >= len(c.Args) {
		return true
	}
	if own, ok := c.Args[at.format].(*ast.Ident); ok && own.Name == "format" {
		return true // handed on
	}
	where := h.files.Position(c.Pos()).String()
	format, ok := literal(c.Args[at.format])
	context := ""
	if ok && at.context >= 0 {
		context, ok = literal(c.Args[at.context])
	}
	if !ok {
		h.wrong = append(h.wrong, where+": the format is no literal")
		return true
	}
	if specs, err := verbs(format); err != nil {
		h.wrong = append(h.wrong, fmt.Sprintf("%s: %q: %v", where, format, err))
	} else if n := len(c.Args) - at.format - 1; n != len(specs) && !c.Ellipsis.IsValid() {
		h.wrong = append(h.wrong, fmt.Sprintf("%s: %q has %d verbs and %d arguments", where, format, len(specs), n))
	}
	key := keyOf(context, format)
	if _, ok := h.found[key]; !ok && wordy(format) {
		h.found[key] = where
	}
	return true
}

// templates gathers the values of a list or a map of Templates.
func (h *harvester) templates(n ast.Node) bool {
	list, ok := n.(*ast.CompositeLit)
	if !ok {
		return true
	}
	var of ast.Expr
	switch t := list.Type.(type) {
	case *ast.MapType:
		of = t.Value
	case *ast.ArrayType:
		of = t.Elt
	}
	name, ok := of.(*ast.SelectorExpr)
	if !ok || name.Sel.Name != "Template" {
		return true
	}
	for _, e := range list.Elts {
		if pair, ok := e.(*ast.KeyValueExpr); ok {
			e = pair.Value
		}
		where := h.files.Position(e.Pos()).String()
		text, ok := literal(e)
		switch {
		case !ok:
			h.wrong = append(h.wrong, where+": the template is no literal")
		case !gap.MatchString(text) && strings.Contains(text, "%"):
			h.wrong = append(h.wrong, fmt.Sprintf("%s: %q has a %% and no gap, and would be taken for a format", where, text))
		case h.found[text] == "" && wordy(text):
			h.found[text] = where
		}
	}
	return true
}

// gap is a named gap of a template; a format has none.
var gap = regexp.MustCompile(`\{[a-z][A-Za-z0-9]*\}`)

func literal(e ast.Expr) (string, bool) {
	switch v := e.(type) {
	case *ast.BasicLit:
		s, err := strconv.Unquote(v.Value)
		return s, err == nil
	case *ast.BinaryExpr:
		a, ok := literal(v.X)
		b, ok2 := literal(v.Y)
		return a + b, ok && ok2 && v.Op == token.ADD
	case *ast.ParenExpr:
		return literal(v.X)
	}
	return "", false
}

var verb = regexp.MustCompile(`%([-+# 0]*[0-9]*(?:\.[0-9]+)?)(?:\[([0-9]+)\])?(.)`)

// verbs are what a format takes, by place: each verb with its flags. Of a template
// they are its gaps, which may stand in any order, and more than once.
func verbs(format string) (map[int][]string, error) {
	out := map[int][]string{}
	if gaps := gap.FindAllString(format, -1); gaps != nil {
		slices.Sort(gaps)
		out[0] = slices.Compact(gaps)
		return out, nil
	}
	next := 1
	for _, m := range verb.FindAllStringSubmatch(format, -1) {
		if m[3] == "%" {
			continue
		}
		if !strings.Contains("sqvdgfet", m[3]) {
			return nil, fmt.Errorf("%s is no verb that a sentence takes", m[0])
		}
		if m[2] != "" {
			next, _ = strconv.Atoi(m[2])
		}
		out[next] = append(out[next], m[1]+m[3])
		next++
	}
	for _, v := range out {
		slices.Sort(v)
	}
	return out, nil
}

// wordy tells whether a format can be said differently at all: it has a letter
// or one of the signs that French sets apart.
func wordy(format string) bool {
	if gap.MatchString(format) {
		format = gap.ReplaceAllString(format, "")
	} else {
		format = verb.ReplaceAllString(format, "")
	}
	return strings.ContainsFunc(format, func(r rune) bool {
		return unicode.IsLetter(r) || strings.ContainsRune(":;?!", r)
	})
}

// faultOf is what is wrong with the words of an entry, or nothing.
func faultOf(e entry) string {
	format := e.key
	if strings.HasPrefix(format, "[") {
		_, format, _ = strings.Cut(format, "] ")
	}
	edges := func(s string) [2]int {
		return [2]int{len(s) - len(strings.TrimLeft(s, " \n")), len(s) - len(strings.TrimRight(s, " \n"))}
	}
	a, errA := verbs(format)
	b, errB := verbs(e.words)
	switch {
	case errA != nil:
		return errA.Error()
	case errB != nil:
		return errB.Error()
	case fmt.Sprint(a) != fmt.Sprint(b):
		return fmt.Sprintf("it takes %v where English takes %v", b, a)
	case edges(format) != edges(e.words):
		return "it begins or ends with other spaces"
	case strings.TrimSpace(e.words) == "":
		return "it is empty"
	}
	return ""
}

// TestCatalogs holds the catalogs against what the core says.
func TestCatalogs(t *testing.T) {
	said, wrong := harvest(t)
	for _, w := range wrong {
		t.Error(w)
	}
	if len(said) < 50 {
		t.Fatalf("only %d formats were found", len(said))
	}
	keys := make([]string, 0, len(said))
	for k := range said {
		keys = append(keys, k)
	}
	slices.Sort(keys)
	for _, l := range Languages()[1:] {
		if *update {
			renew(t, l, keys)
			continue
		}
		known := map[string]bool{}
		for i, e := range l.catalog() {
			known[e.key] = e.words != ""
			if i > 0 && e.key <= l.catalog()[i-1].key {
				t.Errorf("%s: %q is out of order or twice; run go test ./core/words -update", l, e.key)
			}
			if f := faultOf(e); f != "" && e.words != "" {
				t.Errorf("%s: %q: %s", l, e.words, f)
			}
			if _, ok := said[e.key]; !ok && slices.Contains(complete, l) {
				t.Errorf("%s: nobody says %q; run go test ./core/words -update", l, e.key)
			}
		}
		missing := 0
		var rows strings.Builder
		for _, k := range keys {
			if !known[k] {
				missing++
				fmt.Fprintf(&rows, "\t{%s, \"\"}, // %s\n", quote(k), said[k])
			}
		}
		if missing > 0 && slices.Contains(complete, l) {
			t.Errorf("%s lacks %d of %d sentences; go test ./core/words -update puts them in, to be filled:\n%s", l, missing, len(said), &rows)
		} else {
			t.Logf("%s: %d of %d sentences", l, len(said)-missing, len(said))
		}
	}
}

func quote(s string) string {
	if strings.Contains(s, `"`) && !strings.ContainsAny(s, "`\n") {
		return "`" + s + "`"
	}
	// spaces that do not break are kept as they are, to be read
	return strings.NewReplacer(`\u00a0`, "\u00a0", `\u202f`, "\u202f").Replace(strconv.Quote(s))
}

var rows = regexp.MustCompile(`(?s)(= \[\]entry\{).*`)

// renew writes a catalog anew: sorted, with the keys that it lacks, without
// those that nobody says any more; what was said for these is told.
func renew(t *testing.T, l Language, keys []string) {
	path := string(l) + ".go"
	file, err := os.ReadFile(path)
	if err != nil {
		t.Fatal(err)
	}
	old := map[string]string{}
	for _, e := range l.catalog() {
		old[e.key] = e.words
		if !slices.Contains(keys, e.key) {
			t.Logf("%s: dropped {%s, %s}", l, quote(e.key), quote(e.words))
		}
	}
	var b strings.Builder
	for _, k := range keys {
		fmt.Fprintf(&b, "\t{%s, %s},\n", quote(k), quote(old[k]))
	}
	out := rows.ReplaceAllLiteral(file, []byte("= []entry{\n"+b.String()+"}\n"))
	if err := os.WriteFile(path, out, 0o644); err != nil {
		t.Fatal(err)
	}
}
