package sheet

import (
	"bytes"
	"compress/zlib"
	"encoding/binary"
	"fmt"
	"io"
	"testing"

	"github.com/tdewolff/canvas/renderers/pdf"
)

// rawPDF is a sheet as the library writes it.
func rawPDF(t testing.TB) []byte {
	d, err := reportDocument(sampleInput(), A4, ReportOptions{})
	if err != nil {
		t.Fatal(err)
	}
	var raw bytes.Buffer
	r := pdf.New(&raw, 210, 297, &pdf.Options{SubsetFonts: true})
	for _, op := range d.pages[0].ops {
		op(r)
	}
	if err := r.Close(); err != nil {
		t.Fatal(err)
	}
	return raw.Bytes()
}

// Sealed, the file still opens by its own table, every object but the
// catalog, the information and the fonts is as it was, and nothing in a font
// tells the time. Sealing twice changes nothing.
func TestSeal(t *testing.T) {
	raw := rawPDF(t)
	if !bytes.Contains(raw, []byte("/CreationDate")) {
		t.Error("the library no longer stamps its files: seal has less to do")
	}
	sealed, err := seal(raw, "Größe (1)", "en")
	if err != nil {
		t.Fatal(err)
	}
	before, err := openPDF(raw)
	if err != nil {
		t.Fatal(err)
	}
	after, err := openPDF(sealed)
	if err != nil {
		t.Fatal(err)
	}
	fonts := map[int]bool{}
	for _, o := range before.objects {
		if n, ok := refAfter(o, "/FontFile2"); ok {
			fonts[n] = true
		}
	}
	if len(fonts) != 2 {
		t.Fatalf("%d fonts", len(fonts))
	}
	for i, o := range before.objects {
		n := i + 1
		switch {
		case fonts[n]:
			sfnt := inflate(t, after.objects[i])
			if got := checksum(sfnt); got != 0xB1B0AFBA {
				t.Errorf("font %d sums to %X", n, got) // OpenType, table head, checksumAdjustment
			}
			head := tableOf(sfnt, "head")
			if !bytes.Equal(head[20:28], head[28:36]) {
				t.Errorf("font %d tells when it was written", n)
			}
		case n != before.root && n != before.info:
			got := after.objects[i]
			if _, body, ok := bytes.Cut(o, []byte(">>stream\n")); ok {
				o, got = bytes.TrimSuffix(body, []byte("\nendstream\n")), inflate(t, got)
			}
			if !bytes.Equal(o, got) {
				t.Errorf("object %d changed", n)
			}
		}
	}
	again, err := seal(sealed, "Größe (1)", "en")
	if err != nil || !bytes.Equal(again, sealed) {
		t.Errorf("sealing twice differs (%v)", err)
	}
}

func inflate(t *testing.T, obj []byte) []byte {
	_, body, _ := bytes.Cut(obj, []byte(">>stream\n"))
	z, err := zlib.NewReader(bytes.NewReader(body))
	if err != nil {
		t.Fatal(err)
	}
	b, err := io.ReadAll(z)
	if err != nil {
		t.Fatal(err)
	}
	return b
}

func tableOf(sfnt []byte, tag string) []byte {
	for e := sfnt[12:]; ; e = e[16:] {
		if string(e[:4]) == tag {
			off := binary.BigEndian.Uint32(e[8:])
			return sfnt[off : off+binary.BigEndian.Uint32(e[12:])]
		}
	}
}

// What is not as the library writes it is refused, not patched by guess.
func TestSealRefuses(t *testing.T) {
	raw := rawPDF(t)
	for name, bad := range map[string][]byte{
		"empty":     nil,
		"cut short": raw[:len(raw)/2],
		"shifted":   append([]byte("%"), raw...),
		"no root":   bytes.Replace(raw, []byte("/Root"), []byte("/Boot"), 1),
		"no pages":  bytes.Replace(raw, []byte("/Pages 3"), []byte("/Cages 3"), 1),
	} {
		if _, err := seal(bad, "", "en"); err == nil {
			t.Errorf("%s: no error", name)
		}
	}
}

func FuzzSeal(f *testing.F) {
	raw := rawPDF(f)
	f.Add(raw)
	f.Add([]byte("xref\n0 2\n0000000000 65535 f \n0000000000 00000 n \ntrailer\n<</Info 1 0 R/Root 1 0 R>>\nstartxref\n0\n%%EOF\n"))
	f.Add(fmt.Appendf(nil, "%s\nstartxref\n-1\n", raw[:40]))
	f.Fuzz(func(t *testing.T, b []byte) {
		sealed, err := seal(b, "t", "en")
		if err != nil {
			return
		}
		if _, err := openPDF(sealed); err != nil {
			t.Errorf("a sealed file does not open: %v", err)
		}
	})
}
