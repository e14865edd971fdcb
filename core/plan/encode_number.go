package plan

// Writing numbers, of which a plan has some six thousand. Nearly all have few
// decimals: they are put down as whole numbers of the last decimal, three digits at a
// time, many times faster than encoding/json would.

import (
	"encoding/binary"
	"math"
	"slices"
	"strconv"
)

// most is how many bytes any such number takes, with what is written beyond it.
const most = 24

// appendNumber writes a number as encoding/json does: the shortest digits that
// read back as the same. For a quotient of a whole number by 1000 those are the
// whole number's own, as long as it has no more than 15.
func appendNumber(b []byte, v float64) []byte {
	n := math.RoundToEven(v * 1000)
	if !(math.Abs(n) < 1e9 && n/1000 == v && (v != 0 || !math.Signbit(v))) {
		return appendAny(b, v)
	}
	k := int64(n)
	if k <= -1e6 || k >= 1e6 {
		return appendDecimal(b, n*1000)
	}
	if cap(b)-len(b) < most {
		b = slices.Grow(b, most)
	}
	at := len(b)
	out := b[:cap(b)]
	if k < 0 {
		out[at] = '-'
		at++
		k = -k
	}
	w, part := threes[uint32(k)/1000], uint32(k)%1000
	lead := w >> 24 & 15
	binary.LittleEndian.PutUint32(out[at:], w>>(24-8*lead))
	at += int(lead)
	if part > 0 {
		w = threes[part]
		binary.LittleEndian.PutUint32(out[at:], w<<8|'.')
		at += 1 + int(w>>28)
	}
	return out[:at]
}

// appendAny writes any number so, by the rule of ECMAScript: with an exponent only
// where it is very large or small, without a nought before that.
func appendAny(b []byte, v float64) []byte {
	if math.IsNaN(v) || math.IsInf(v, 0) {
		panic("not finite") // Call tells it as a fault of the program
	}
	if size := math.Abs(v); size == 0 || size >= 1e-6 && size < 1e21 {
		return strconv.AppendFloat(b, v, 'f', -1, 64)
	}
	b = strconv.AppendFloat(b, v, 'e', -1, 64)
	if n := len(b); b[n-4] == 'e' && b[n-3] == '-' && b[n-2] == '0' {
		b[n-2], b = b[n-1], b[:n-1]
	}
	return b
}

// appendFloat writes a number to the sixth decimal, far below anything that is
// told of it, several times as fast as all its digits would be.
func appendFloat(b []byte, v float64) []byte {
	if n := math.RoundToEven(v * 1e6); math.Abs(n) < 1e15 {
		return appendDecimal(b, n)
	}
	return appendNumber(b, v)
}

// appendDecimal writes n millionths, n a whole number below 1e15, without zeros at
// the end.
func appendDecimal(b []byte, n float64) []byte {
	if cap(b)-len(b) < most {
		b = slices.Grow(b, most)
	}
	k := int64(math.Abs(n))
	var whole, part uint32
	if k < 1<<32 {
		whole, part = uint32(k)/1e6, uint32(k)%1e6
	} else {
		whole, part = uint32(k/1e6), uint32(k%1e6)
	}
	at := len(b)
	out := b[:cap(b)]
	if n < 0 {
		out[at] = '-'
		at++
	}
	if whole < 1000 {
		w := threes[whole]
		lead := w >> 24 & 15
		binary.LittleEndian.PutUint32(out[at:], w>>(24-8*lead))
		at += int(lead)
	} else {
		at = len(strconv.AppendUint(out[:at], uint64(whole), 10))
	}
	if part > 0 {
		w, rest := threes[part/1000], threes[part%1000]
		binary.LittleEndian.PutUint32(out[at:], w<<8|'.')
		at += 4
		if binary.LittleEndian.PutUint32(out[at:], rest); part%1000 > 0 {
			at += int(rest >> 28)
		} else {
			at += int(w>>28) - 3
		}
	}
	return out[:at]
}

// threes are the numbers below 1000 with all three digits, the first in the lowest
// byte; in the highest is how many are left without zeros at the beginning, at least
// one, and, sixteenfold, without those at the end.
var threes = func() (t [1000]uint32) {
	for n := range uint32(1000) {
		lead, end := uint32(3), uint32(3)
		for least := uint32(100); lead > 1 && n < least; least /= 10 {
			lead--
		}
		for rest := n; end > 0 && rest%10 == 0; rest /= 10 {
			end--
		}
		t[n] = '0' + n/100 | ('0'+n/10%10)<<8 | ('0'+n%10)<<16 | (lead|end<<4)<<24
	}
	return t
}()
