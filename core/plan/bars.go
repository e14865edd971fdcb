package plan

import "moldwright/core/casting"

// bars works out shrinkage from test bars.
func bars(a *call) (any, [][]byte, error) {
	var q struct {
		Bars []casting.Bar `json:"bars"`
	}
	if err := decode(a.json, &q); err != nil {
		return nil, nil, err
	}
	out, fault := casting.TestBars(q.Bars)
	if fault != nil {
		return nil, nil, fault
	}
	return out, nil, nil
}
