package plan

import "moldwright/core/exercise"

// exercises poses, marks and collects exercises; see package exercise for the
// requests.
func exercises(request []byte, _ Progress) (any, [][]byte, error) {
	var q exercise.Request
	if err := decode(request, &q); err != nil {
		return nil, nil, err
	}
	reply, err := exercise.Do(&q)
	return reply, nil, err
}
