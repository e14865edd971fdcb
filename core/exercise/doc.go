// Package exercise sets, marks and explains undercut exercises. A question is a
// kind, a difficulty and a seed, written as a short code that gives the same
// question on every machine, or the same on a job of the teacher's own. Marking
// is done by the same survey and judging that plan a mold; nothing here knows a
// second truth. It reads no clock and no random source but SplitMix64 (Gen).
//
// Kinds: catch (mark where it catches for a pull), count (fewest parts and what
// rules out fewer), where (height at which a lower and an upper part must
// part), pull (the pull of each given part), draft (read it at a point), size
// (true size and oversize from shrinkage), drain (does it drain, does air
// escape), save (smallest change of the form that saves a part).
//
// Questions are drawn backwards: the class of the answer from the seed alone,
// then pots around it until one stands well away from every threshold (the
// sound methods, with their margins). Feedback names the point, the angle or the
// pull, since what explains teaches more than right or wrong (Van der Kleij,
// Feskens and Eggen 2015, a meta-analysis of 40 studies; from memory), hints
// rise from pointing to naming the rule to doing the step (Aleven and others
// 2003; from memory), and whether an answer can be read is told apart from
// whether it is right.
//
// # The op "exercise"
//
// All lengths are mm at mold size, heights above the lowest place of the foot.
// A question is named by a ref, which stands flat in the request:
//
//	"code":"C2-0A7K-X"                              a generated question
//	"kind":"catch","difficulty":2,"seed":1047       the same, 1 to 3, 0 to 923520
//	"kind":"catch","difficulty":2,"seed":3,"job":{…} on a given job
//
// Requests and replies (types of this package in brackets):
//
//	{"do":"pose", ref}                     -> [Question]
//	{"do":"mark", ref, "answer":A, "tries":n}
//	                                       -> [Marked]; n tries were marked before
//	{"do":"hint", ref, "level":1..3}       -> [Hint]
//	{"do":"solve", ref, "tries":n}         -> [Solution], from two tries on;
//	                                          "key":true at once, for a teacher
//	{"do":"next", ref}                     -> [Question], with the next seed
//	{"do":"set", "set":S, "draw":{"kinds":[…],"difficulty":2,"each":1,"seed":5},
//	 "student":"…"}                        -> [SetReply]; S checked and completed,
//	                                          drawn questions put behind it; each
//	                                          key may be left out
//	{"do":"result", "set":S, "student":"…", "answers":[G,…]}
//	                                       -> [ResultReply]
//	{"do":"collect", "results":[R,…], "set":S}
//	                                       -> [Table]; S may be left out
//
// An answer A holds what the question's fields ask for, by their types:
//
//	{"marks":[{"r":31.5,"z":80},{"z":12}]}   marks; without r the outermost wall
//	{"choices":{"marks":"none"}}             in place of marks: it catches nowhere
//	{"value":"12,5 mm"}  {"value":12.5,"unit":"mm"}   number
//	{"choices":{"count":"3","reason":"waist+lower"}}  choice, by id of field
//	{"job":{…}}                              job: the changed form
//
// Marked has "valid":false and "invalid":{code, field, words} where the answer
// cannot be marked (unreadable, no unit, a slip of ten); that costs no try. Else
// "mark" is right, close or notYet, "code" one of Reasons(kind), "words" say why,
// "details" mark each point, part or choice, and "pictures" show what sticks.
//
// A set S and a result R are documents, as objects or as the text of a file:
//
//	{"format":"moldwright-class","version":1,"title":"…","note":"…","hints":true,
//	 "solutions":true,"shuffle":false,"questions":[ref,…]}
//	{"format":"moldwright-result","version":1,"title":"…","set":"print of the set",
//	 "student":"…","answers":[{"ref":…,"label":"…","tries":[A,…],"hints":0,
//	 "solution":false,"marks":[…],"mark":"right","score":1}],"score":1,"of":1,
//	 "honest":"…"}
//
// G is {"tries":[A,…],"hints":n,"solution":bool}, one for each question in
// order. Collect marks everything anew and does not trust the marks of a file.
// A local page keeps no secrets: "honest" says so wherever results are shown.
package exercise
