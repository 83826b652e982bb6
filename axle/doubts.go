package axle

import (
	"reflect"

	"axlewright/quantity"
)

// figureKinds are the dimensions that figures have, for default doubts.
var figureKinds = []quantity.Dimension{
	quantity.Length, quantity.Torque, quantity.Force, quantity.Pressure, quantity.Mass, quantity.Angle,
	quantity.Stiffness, quantity.RotationalStiffness, quantity.Speed, quantity.PressureSpeed, quantity.Number,
}

// settleDoubts gives every figure without a doubt of its own the catalogue's
// doubt for its kind, and marks it; and cuts all doubts off where they reach
// what a figure cannot be.
func settleDoubts(v any, defaults []DefaultDoubt) {
	percent := map[string]float64{}
	for _, d := range defaults {
		percent[d.Kind] = d.Percent
	}
	eachTagged(reflect.ValueOf(v).Elem(), "", func(n *Number, allowed string) {
		if n.Given() && n.Shape == Exact && !n.Certain && n.Value != 0 {
			if share := percent[n.Kind] / 100; share > 0 {
				n.spreadShare(share)
				n.ByDefault = true
			}
		}
		n.keepWithin(rangeOf(allowed))
	})
}

// eachTagged visits every figure with the tag `range` of its field.
func eachTagged(v reflect.Value, allowed string, visit func(n *Number, allowed string)) {
	switch v.Kind() {
	case reflect.Pointer:
		if !v.IsNil() {
			eachTagged(v.Elem(), allowed, visit)
		}
	case reflect.Slice:
		for i := range v.Len() {
			eachTagged(v.Index(i), allowed, visit)
		}
	case reflect.Struct:
		if n, is := asNumber(v); is {
			visit(n, allowed)
			return
		}
		for i := range v.NumField() {
			if f := v.Type().Field(i); f.IsExported() {
				eachTagged(v.Field(i), f.Tag.Get("range"), visit)
			}
		}
	}
}
