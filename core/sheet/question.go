package sheet

import (
	"moldwright/core/form"
	"moldwright/core/words"
)

// What a worksheet and its key are made from: questions as plain values. The
// sheets know nothing of how a question is drawn up or marked.

// ClassSet is the questions of one worksheet, in order. Lengths are mm at mold
// size, heights above the lowest place of the foot.
type ClassSet struct {
	// Language is that of the sheet; what is given in words is in it already.
	Language words.Language
	Title    string
	Note     string // of the teacher, to the class
	Student  string // where the sheet is for one student; else a blank
	Number   string // tells sets apart: worksheet and key of a set have the same
	// Questions are at least one.
	Questions []Question
}

// Question is one question.
type Question struct {
	Code      string // empty of a question on a pot of the teacher's own
	Kind      string // in words
	Pot       string // the pot's name
	Text      string
	Given     []string // facts to work with
	Tolerance string
	Asks      []Ask
	// TrueSize tells that something is measured or drawn on the drawing, so that
	// it goes at 1:1 on a side of its own.
	TrueSize bool
	// Shape is drawn; without a contour nothing is.
	Shape Shape
	Key   Worked
}

// AskKind is how an answer is given on paper.
type AskKind int

const (
	Tick   AskKind = iota // a box before each option
	Number                // a line for the number, one for its unit
	Marks                 // on the drawing; the options, if any, say there is none
	Redraw                // a changed outline, on the drawing
)

// Ask is one thing to answer.
type Ask struct {
	Kind    AskKind
	Words   string
	Options []string
}

// Shape is what is drawn of a question.
type Shape struct {
	Contour []form.Point // from the axis under the foot to the rim, or to the axis
	Turned  bool         // drawn upside down, as it is cast
	Pull    *[3]float64  // unit vector; nil where none is shown
	Spots   []form.Point // marked places
	Parts   []Region     // of the mold
}

// Worked is what the key has of a question.
type Worked struct {
	Short string // the answer in words
	// Ticked are, by ask, the options that are right, or -1.
	Ticked []int
	Marks  []form.Point // places to mark
	Levels []float64    // heights to find
	Line   []form.Point // the changed contour, or the inside of the cast
	Held   []Held
	Steps  []string // the reasons
	Slips  []string // the common errors, and where each comes from
}

// Held is a stretch of the contour that catches.
type Held struct {
	Stretch []form.Point
	DepthMM float64
	Pull    [3]float64
}

// drawn tells whether the question has a drawing.
func (q *Question) drawn() bool { return len(q.Shape.Contour) > 1 }

// label is what names the question beside its number.
func (q *Question) label(l tongue) string {
	if q.Code == "" {
		return l.say("own pot")
	}
	return q.Code
}
