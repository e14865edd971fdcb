package job

import (
	"fmt"

	"moldwright/core/words"
)

// Fault is bad input, told so that it can be mended: which field, which line
// of the text where there is one, what is wrong and what to do.
type Fault struct {
	Code    string     `json:"code"`
	Message words.Text `json:"message"`
	Field   string     `json:"field,omitempty"`
	Line    int        `json:"line,omitempty"`
}

func (f *Fault) Error() string { return f.Message.String() }

// Faultf is a Fault of the code at the field, with a message that holds the
// remedy; the format is a key of the catalogs of package words.
func Faultf(code, field, format string, args ...any) *Fault {
	return &Fault{Code: code, Field: field, Message: words.Say(format, args...)}
}

// AtLine is the fault with its line set.
func (f *Fault) AtLine(line int) *Fault {
	f.Line = line
	return f
}

// Faults are several at once, as a paste of rows has them. The first is the
// one that a caller with room for one shows.
type Faults []*Fault

func (f Faults) Error() string {
	if len(f) == 1 {
		return f[0].Error()
	}
	return fmt.Sprintf("%s (and %d more)", f[0].Message, len(f)-1)
}
