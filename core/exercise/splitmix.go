package exercise

import "math/bits"

// Gen is SplitMix64 (Steele, Lea and Flood, "Fast splittable pseudorandom
// number generators", OOPSLA 2014): the state steps by the odd constant
// 0x9e3779b97f4a7c15 and every step is mixed by two multiplications. Chosen
// because it is three lines of 64-bit integers, alike on every processor, so
// that a sheet printed today can be made again in any year. It is no source of
// secrets.
type Gen struct{ state uint64 }

// NewGen is the generator with the given state.
func NewGen(state uint64) *Gen { return &Gen{state} }

// Next is the next 64 bits.
func (g *Gen) Next() uint64 {
	g.state += 0x9e3779b97f4a7c15
	z := g.state
	z = (z ^ z>>30) * 0xbf58476d1ce4e5b9
	z = (z ^ z>>27) * 0x94d049bb133111eb
	return z ^ z>>31
}

// Int is a whole number from 0 to n-1: the high half of the product of the
// next 64 bits and n. n is at least 1.
func (g *Gen) Int(n int) int {
	hi, _ := bits.Mul64(g.Next(), uint64(n))
	return int(hi)
}

// Between is a whole number from lo to hi, both included.
func (g *Gen) Between(lo, hi int) int {
	if hi <= lo {
		return lo
	}
	return lo + g.Int(hi-lo+1)
}

// shuffle puts n things in a drawn order (Fisher and Yates).
func (g *Gen) shuffle(n int, swap func(i, j int)) {
	for i := n - 1; i > 0; i-- {
		swap(i, g.Int(i+1))
	}
}

// pick is one of the things.
func pick[T any](g *Gen, list ...T) T { return list[g.Int(len(list))] }
