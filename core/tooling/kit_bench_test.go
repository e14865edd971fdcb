package tooling

import (
	"testing"

	"moldwright/core/job"
)

func BenchmarkKit(b *testing.B) {
	for _, pot := range []string{"jar", "waist"} {
		j := job.Defaults()
		j.Form.Size = job.SizeMold
		j.Form.Outer = pots[pot]
		all, lay := laid(&j)
		for i := range all {
			if id := all[i].ID; id != "two" && id != "sides3+lower+upper" {
				continue
			}
			md := lay(i)
			b.Run(pot+" "+all[i].ID, func(b *testing.B) {
				for b.Loop() {
					Kit(&j, md)
				}
			})
		}
	}
}
