package plan

import "moldwright/core/exercise"

// exercises poses, marks and collects exercises; see package exercise for the
// requests.
func exercises(a *call) (any, [][]byte, error) {
	var q exercise.Request
	if err := decode(a.json, &q); err != nil {
		return nil, nil, err
	}
	reply, err := exercise.Do(&q, a.language)
	return reply, nil, err
}
