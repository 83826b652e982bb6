package kit

import "testing"

func example(t testing.TB, name string) Drawn {
	t.Helper()
	k, err := Load("../examples/kits/" + name + ".yaml")
	if err != nil {
		t.Fatal(err)
	}
	d, err := k.Draw(Options{Batch: "B0417"})
	if err != nil {
		t.Fatal(err)
	}
	return d
}

func TestTry(t *testing.T) {
	d := example(t, "KIT-T24-A.1")
	for _, r := range d.Bill().Rows {
		t.Logf("%+v", r)
	}
	t.Logf("%+v", d.Bill())
	for _, r := range d.Drilling {
		t.Logf("%+v", r)
	}
	for _, p := range d.Plates {
		t.Log(p.Key(), p.Etched.Lines, p.Etched.At, p.Etched.Size, p.Etched.Turn)
	}
}
