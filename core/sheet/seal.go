package sheet

import (
	"bytes"
	"compress/zlib"
	"encoding/binary"
	"encoding/hex"
	"fmt"
	"io"
	"sort"
	"strconv"
	"unicode/utf16"
)

// The library's PDF writer stamps the time of day into the document and into
// each font, writes the creator where the language belongs, and knows no
// viewer preferences. seal takes its file apart by its cross-reference table
// (ISO 32000-1, 7.5.4), replaces the catalog and the information dictionary,
// takes the clock out of the fonts, deflates every stream with one and the same
// writer (a writer for each, as the library has it, costs more than all else on
// a sheet), and writes a new table. It refuses what it does not know rather
// than guess.

// seal gives the file with title, language and no scaling on printing, and
// with nothing in it that depends on when it was written.
func seal(raw []byte, title, lang string) ([]byte, error) {
	f, err := openPDF(raw)
	if err != nil {
		return nil, fmt.Errorf("sealing the PDF: %w", err)
	}
	pages, ok := refAfter(f.objects[f.root-1], "/Pages")
	if !ok {
		return nil, fmt.Errorf("sealing the PDF: the catalog names no pages")
	}
	// PrintScaling: ISO 32000-1, table 150. Viewers take it as a hint, which
	// is why the sheets say it in words as well.
	f.objects[f.root-1] = fmt.Appendf(nil, "<</Type/Catalog/Lang(%s)/Pages %d 0 R/ViewerPreferences<</DisplayDocTitle true/PrintScaling/None>>>>", lang, pages)
	f.objects[f.info-1] = fmt.Appendf(nil, "<</Creator(Moldwright)/Producer(tdewolff/canvas)/Title%s>>", textString(title))
	fonts := map[int]bool{}
	for _, obj := range f.objects {
		if n, ok := refAfter(obj, "/FontFile2"); ok {
			if n > len(f.objects) {
				return nil, fmt.Errorf("sealing the PDF: font program %d is missing", n)
			}
			fonts[n] = true
		}
	}
	if err := f.deflate(fonts); err != nil {
		return nil, fmt.Errorf("sealing the PDF: %w", err)
	}
	return f.bytes(), nil
}

// pdfFile is a PDF taken apart: the bodies of its objects by number, less
// one, and the order in which they stand.
type pdfFile struct {
	header     []byte
	objects    [][]byte
	order      []int
	root, info int
}

func openPDF(raw []byte) (*pdfFile, error) {
	at := bytes.LastIndex(raw, []byte("\nstartxref\n"))
	if at < 0 {
		return nil, fmt.Errorf("no startxref")
	}
	tail := raw[at+len("\nstartxref\n"):]
	end := bytes.IndexByte(tail, '\n')
	if end < 0 {
		return nil, fmt.Errorf("startxref is cut short")
	}
	table, err := strconv.Atoi(string(tail[:end]))
	if err != nil || table < 0 || table > at {
		return nil, fmt.Errorf("startxref points nowhere")
	}
	var n int
	if _, err := fmt.Sscanf(string(raw[table:min(at, table+32)]), "xref\n0 %d\n", &n); err != nil || n < 2 || n > len(raw)/20 {
		return nil, fmt.Errorf("the cross-reference table is not a single section")
	}
	entries, ok := bytes.CutPrefix(raw[table:at], fmt.Appendf(nil, "xref\n0 %d\n", n))
	if !ok || len(entries) < 20*n {
		return nil, fmt.Errorf("the cross-reference table is cut short")
	}
	f := &pdfFile{objects: make([][]byte, n-1)}
	offsets := make([]int, n-1)
	for i := range offsets {
		e := entries[20*(i+1) : 20*(i+2)]
		if offsets[i], err = strconv.Atoi(string(e[:10])); err != nil || e[17] != 'n' || offsets[i] < 0 || offsets[i] >= table {
			return nil, fmt.Errorf("object %d has no place", i+1)
		}
		f.order = append(f.order, i+1)
	}
	sort.Slice(f.order, func(i, j int) bool { return offsets[f.order[i]-1] < offsets[f.order[j]-1] })
	f.header = raw[:offsets[f.order[0]-1]]
	for k, number := range f.order {
		stop := table
		if k+1 < len(f.order) {
			stop = offsets[f.order[k+1]-1]
		}
		body, ok := bytes.CutPrefix(raw[offsets[number-1]:stop], fmt.Appendf(nil, "%d 0 obj\n", number))
		if ok {
			body, ok = bytes.CutSuffix(body, []byte("\nendobj\n"))
		}
		if !ok {
			return nil, fmt.Errorf("object %d is not where the table says", number)
		}
		f.objects[number-1] = body
	}
	trailer := entries[20*n:]
	var okRoot, okInfo bool
	f.root, okRoot = refAfter(trailer, "/Root")
	f.info, okInfo = refAfter(trailer, "/Info")
	if !okRoot || !okInfo || f.root > len(f.objects) || f.info > len(f.objects) {
		return nil, fmt.Errorf("the trailer names no catalog or no information")
	}
	return f, nil
}

// bytes writes the file with a new table. There is no file identifier: the
// standard asks for one only of encrypted files.
func (f *pdfFile) bytes() []byte {
	out := append([]byte(nil), f.header...)
	offsets := make([]int, len(f.objects))
	for _, number := range f.order {
		offsets[number-1] = len(out)
		out = fmt.Appendf(out, "%d 0 obj\n%s\nendobj\n", number, f.objects[number-1])
	}
	table := len(out)
	out = fmt.Appendf(out, "xref\n0 %d\n0000000000 65535 f \n", len(offsets)+1)
	for _, o := range offsets {
		out = fmt.Appendf(out, "%010d 00000 n \n", o)
	}
	return fmt.Appendf(out, "trailer\n<</Info %d 0 R/Root %d 0 R/Size %d>>\nstartxref\n%d\n%%%%EOF\n", f.info, f.root, len(offsets)+1, table)
}

// refAfter is the object number of a reference that follows the key in the
// dictionary at the head of an object, before any stream.
func refAfter(obj []byte, key string) (int, bool) {
	if i := bytes.Index(obj, []byte(">>stream\n")); i >= 0 {
		obj = obj[:i]
	}
	i := bytes.Index(obj, []byte(key+" "))
	if i < 0 {
		return 0, false
	}
	var n int
	_, err := fmt.Sscanf(string(obj[i+len(key)+1:min(len(obj), i+len(key)+20)]), "%d 0 R", &n)
	return n, err == nil && n > 0
}

// textString is a PDF text string in UTF-16 with its byte order mark, written
// in hexadecimal so that no byte of it needs escaping.
func textString(s string) string {
	b := []byte{0xfe, 0xff}
	for _, u := range utf16.Encode([]rune(s)) {
		b = binary.BigEndian.AppendUint16(b, u)
	}
	return "<" + hex.EncodeToString(b) + ">"
}

// deflate packs every plain stream, and the fonts, which the library always
// packs itself, anew with the clock taken out.
func (f *pdfFile) deflate(fonts map[int]bool) error {
	var packed bytes.Buffer
	z := zlib.NewWriter(&packed)
	for i, obj := range f.objects {
		head, body, ok := bytes.Cut(obj, []byte(">>stream\n"))
		font := fonts[i+1]
		if !ok || bytes.Contains(head, []byte("/Filter")) && !font {
			if font {
				return fmt.Errorf("font program %d is no stream", i+1)
			}
			continue
		}
		if body, ok = bytes.CutSuffix(body, []byte("\nendstream\n")); !ok {
			return fmt.Errorf("stream %d has no end", i+1)
		}
		length := ""
		if font {
			var err error
			if body, err = restamped(head, body); err != nil {
				return err
			}
			head, length = []byte("<<"), fmt.Sprintf("/Length1 %d", len(body))
		} else {
			at := bytes.Index(head, []byte("/Length "))
			if at < 0 {
				return fmt.Errorf("stream %d has no length", i+1)
			}
			rest := bytes.TrimLeft(head[at+len("/Length "):], "0123456789")
			head, length = head[:at], string(rest)
		}
		packed.Reset()
		z.Reset(&packed)
		if _, err := z.Write(body); err != nil {
			return err
		}
		if err := z.Close(); err != nil {
			return err
		}
		f.objects[i] = fmt.Appendf(nil, "%s/Filter/FlateDecode/Length %d%s>>stream\n%s\nendstream\n", head, packed.Len(), length, packed.Bytes())
	}
	return nil
}

// restamped is a font program, opened, with the clock taken out.
func restamped(head, body []byte) ([]byte, error) {
	if !bytes.Contains(head, []byte("/Filter/FlateDecode")) {
		return nil, fmt.Errorf("a font program is not a deflated stream")
	}
	z, err := zlib.NewReader(bytes.NewReader(body))
	if err != nil {
		return nil, fmt.Errorf("a font program: %w", err)
	}
	sfnt, err := io.ReadAll(z)
	if err != nil {
		return nil, fmt.Errorf("a font program: %w", err)
	}
	return sfnt, restamp(sfnt)
}

// restamp sets a font's time of change to its time of making, in place, and
// puts its checksums right (OpenType specification, table head).
func restamp(sfnt []byte) error {
	if len(sfnt) < 12 {
		return fmt.Errorf("a font program is cut short")
	}
	n := int(binary.BigEndian.Uint16(sfnt[4:]))
	for i := 0; i < n && 12+16*(i+1) <= len(sfnt); i++ {
		entry := sfnt[12+16*i:]
		if string(entry[:4]) != "head" {
			continue
		}
		off, size := binary.BigEndian.Uint32(entry[8:]), binary.BigEndian.Uint32(entry[12:])
		if size < 54 || uint64(off)+uint64(size+3)&^3 > uint64(len(sfnt)) {
			return fmt.Errorf("the head of a font program is cut short")
		}
		head := sfnt[off : off+(size+3)&^3]
		copy(head[28:36], head[20:28])
		binary.BigEndian.PutUint32(head[8:], 0)
		binary.BigEndian.PutUint32(entry[4:], checksum(head))
		binary.BigEndian.PutUint32(head[8:], 0xB1B0AFBA-checksum(sfnt))
		return nil
	}
	return fmt.Errorf("a font program has no head")
}

// checksum is the sum of the big-endian words of b, the last filled with 0.
func checksum(b []byte) uint32 {
	var sum uint32
	for ; len(b) >= 4; b = b[4:] {
		sum += binary.BigEndian.Uint32(b)
	}
	var last [4]byte
	copy(last[:], b)
	return sum + binary.BigEndian.Uint32(last[:])
}
