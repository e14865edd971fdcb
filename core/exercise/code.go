package exercise

import (
	"errors"
	"strings"

	"moldwright/core/job"
	"moldwright/core/words"
)

// A code names a generated question: the letter of its kind and its difficulty,
// four digits of the seed, and a check character, as in C2-0A7K-X.
//
// Digits are to the base 31, over the figures and the letters without I, L, O,
// Q and U, which are misread or misheard. With the six characters' values v1 to
// v6 the check character is (1 v1 + 2 v2 + ... + 6 v6) mod 31. 31 is prime, so
// any one wrong character and any two swapped ones are found. Reading takes
// small letters, spaces and missing or other dashes, I and L for 1, O and Q for
// 0, U for V.
//
// What a letter's generator makes is never changed; a generator that makes
// something else gets a letter of its own.
const digits = "0123456789ABCDEFGHJKMNPRSTVWXYZ"

const base = len(digits)

// Seeds is the number of seeds of a kind: 31 to the 4th.
const Seeds = base * base * base * base

// Code is the code of a question.
func Code(kind string, difficulty, seed int) string {
	k := kindOf(kind)
	if k == nil {
		return ""
	}
	body := []byte{k.letter, digits[difficulty]}
	for div := Seeds / base; div > 0; div /= base {
		body = append(body, digits[seed/div%base])
	}
	return string(body[:2]) + "-" + string(body[2:]) + "-" + string(digits[checksum(body)])
}

func checksum(body []byte) int {
	sum := 0
	for i, c := range body {
		sum += (i + 1) * strings.IndexByte(digits, c)
	}
	return sum % base
}

// ReadCode is the question that a code names. Errors are *job.Fault: a code of
// the wrong length, a character that no code has, a check character that does
// not fit, a kind or a difficulty that there is not.
func ReadCode(code string) (Ref, error) {
	bad := func(key string) (Ref, error) { return Ref{}, fault(key, "code", "code", clip(code)) }
	var body []byte
	for _, c := range strings.ToUpper(code) {
		switch c {
		case ' ', '-', '\u2010', '\u2011', '\u2012', '\u2013', '\u2014', '\u2212', '\t', '\n', '\r', '\u00a0':
			continue
		case 'I', 'L':
			c = '1'
		case 'O', 'Q':
			c = '0'
		case 'U':
			c = 'V'
		}
		if c > 127 || strings.IndexByte(digits, byte(c)) < 0 {
			return bad("fault.codeLetter")
		}
		if body = append(body, byte(c)); len(body) > 7 {
			break
		}
	}
	if len(body) != 7 {
		return bad("fault.codeLength")
	}
	if digits[checksum(body[:6])] != body[6] {
		return bad("fault.codeCheck")
	}
	for i := range kinds {
		if kinds[i].letter == body[0] {
			d := strings.IndexByte(digits, body[1])
			if d < 1 || d > Hardest {
				return bad("fault.codeKind")
			}
			seed := 0
			for _, c := range body[2:6] {
				seed = seed*base + strings.IndexByte(digits, c)
			}
			return Ref{Kind: kinds[i].id, Difficulty: d, Seed: seed}, nil
		}
	}
	return bad("fault.codeKind")
}

func clip(s string) string {
	if r := []rune(s); len(r) > 40 {
		return string(r[:40]) + "…"
	}
	return s
}

// fault is a fault whose code is the last part of the key of its words.
func fault(key, field string, args ...any) *job.Fault {
	_, code, _ := strings.Cut(key, ".")
	return &job.Fault{Code: code, Field: field, Message: say(key, args...)}
}

// why is what an error tells, in every language where it is a fault.
func why(err error) words.Text {
	var many job.Faults
	var one *job.Fault
	switch {
	case errors.As(err, &many) && len(many) == 1:
		return many[0].Message
	case errors.As(err, &one):
		return one.Message
	}
	return words.Plain(err.Error())
}
