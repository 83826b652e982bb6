package bolt

import (
	"testing"

	"axlewright/internal/published"
)

func TestEmbeddingPublished(t *testing.T) {
	const source = "VDI 2230-1:2015, table 5, with δ_S 2.6e-6 and δ_P 0.5e-6 mm/N (from memory)"
	amount := must(EmbeddingAmount(EmbeddingParams{Turned, Axial, 1, 1, 2}))
	published.Check(t, []published.Row{
		{Name: "one thread, one head, two interfaces, Rz 10 to 40, axial, µm", Got: amount * 1e6, Printed: "10", Source: source},
		{Name: "loss of preload, N", Got: must(EmbeddingLoss(amount, 2.6e-9+0.5e-9)), Printed: "3225.81", Source: source},
		{Name: "the same in shear, µm", Got: must(EmbeddingAmount(EmbeddingParams{Turned, Shear, 1, 1, 2})) * 1e6, Printed: "12.5", Source: source},
		{Name: "head, nut, thread and one interface, smooth, axial, µm", Got: must(EmbeddingAmount(EmbeddingParams{Smooth, Axial, 1, 2, 1})) * 1e6, Printed: "9.5", Source: source},
		{Name: "the same, rough, shear, µm", Got: must(EmbeddingAmount(EmbeddingParams{Rough, Shear, 1, 2, 1})) * 1e6, Printed: "19.5", Source: source},
	})
}

func TestRougherAndSidewaysBedInMore(t *testing.T) {
	for _, load := range []LoadKind{Axial, Shear} {
		last := 0.0
		for _, r := range []Roughness{Smooth, Turned, Rough} {
			amount := must(EmbeddingAmount(EmbeddingParams{r, load, 1, 2, 2}))
			if amount <= last {
				t.Errorf("%s %s: %g after %g", r, load, amount, last)
			}
			if sideways := must(EmbeddingAmount(EmbeddingParams{r, Shear, 1, 2, 2})); sideways < amount {
				t.Errorf("%s: shear %g below axial %g", r, sideways, amount)
			}
			last = amount
		}
	}
}

func TestEmbeddingRefuses(t *testing.T) {
	_, err := EmbeddingAmount(EmbeddingParams{"polished", Axial, 1, 1, 1})
	refuses(t, "Roughness", err)
	_, err = EmbeddingAmount(EmbeddingParams{Turned, Axial, 1, -1, 1})
	refuses(t, "Faces", err)
	_, err = EmbeddingAmount(EmbeddingParams{Turned, Axial, 0, 0, 0})
	refuses(t, "Interfaces", err)
	_, err = EmbeddingLoss(1e-5, 0)
	refuses(t, "resilience", err)
}
