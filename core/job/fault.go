package job

import (
	"errors"

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

// Verbatim is what a library's reader says of an error, marked as its own words,
// which are English: it stands behind a sentence that says the same in ours.
func Verbatim(err error) words.Text {
	return words.Say("(The reader's own words, in English: “%s”)", err.Error())
}

// AtLine is the fault with its line set.
func (f *Fault) AtLine(line int) *Fault {
	f.Line = line
	return f
}

// Faults are several at once, as a paste of rows has them. The first is the
// one that a caller with room for one shows.
type Faults []*Fault

func (f Faults) Error() string { return Words(f).String() }

// Words are what an error says: of a Fault its message, of several the first
// and how many more there are, of any other error what it says in English.
func Words(err error) words.Text {
	var many Faults
	var one *Fault
	switch {
	case errors.As(err, &many) && len(many) == 1:
		return many[0].Message
	case len(many) > 1:
		return words.Say("%s (and %d more)", many[0].Message, len(many)-1)
	case errors.As(err, &one):
		return one.Message
	}
	return words.Plain(err.Error())
}
