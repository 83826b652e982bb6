package axle

import (
	"reflect"
	"strconv"
	"strings"
)

// A Sampler holds a private copy of a T, usually an Assembly or a Vehicle,
// and redraws every doubtful figure in it. It is not safe for concurrent use:
// one a worker.
type Sampler[T any] struct {
	Drawn T // the copy; its figures' Value changes with every Draw
	slots []slot
}

// A slot is one doubtful figure: where it stands in the copy, what it was, and
// which column of the draws is its own.
type slot struct {
	target *Number
	was    Number
	column int
}

// NewSampler copies v. column gives the column for the place of each doubtful
// figure, such as "Casting.CapBolts.Friction"; places begin with prefix.
func NewSampler[T any](v T, prefix string, column func(place string) int) *Sampler[T] {
	s := &Sampler[T]{Drawn: v}
	root := reflect.ValueOf(&s.Drawn).Elem()
	detach(root)
	eachNumber(root, prefix, func(place string, n *Number) {
		if n.Doubtful() {
			s.slots = append(s.slots, slot{n, *n, column(place)})
		}
	})
	return s
}

// Draw sets every doubtful figure to the value it has at one draw. p holds a
// probability (0..1) and z its normal score for each column.
func (s *Sampler[T]) Draw(p, z []float64) {
	for _, slot := range s.slots {
		slot.target.Value = slot.was.AtScore(p[slot.column], z[slot.column])
	}
}

// EachFigure calls visit for every figure in v in the order of its fields,
// with its place. v must be a pointer to a struct.
func EachFigure(v any, prefix string, visit func(place string, n *Number)) {
	eachNumber(reflect.ValueOf(v).Elem(), prefix, visit)
}

func eachNumber(v reflect.Value, place string, visit func(string, *Number)) {
	switch v.Kind() {
	case reflect.Pointer:
		if !v.IsNil() {
			eachNumber(v.Elem(), place, visit)
		}
	case reflect.Slice:
		for i := range v.Len() {
			eachNumber(v.Index(i), place+"["+itemName(v.Index(i), i)+"]", visit)
		}
	case reflect.Struct:
		if v.Type() == numberType {
			visit(strings.TrimPrefix(place, "."), v.Addr().Interface().(*Number))
			return
		}
		for i := range v.NumField() {
			field := v.Type().Field(i)
			inner := place
			if field.Type != numberType { // Of embeds its Number: the place is the field's
				inner = place + "." + field.Name
			}
			if field.IsExported() {
				eachNumber(v.Field(i), inner, visit)
			}
		}
	}
}

// itemName names an item of a list by its Name, else by its position.
func itemName(v reflect.Value, i int) string {
	if v.Kind() == reflect.Struct {
		if name := v.FieldByName("Name"); name.IsValid() && name.Kind() == reflect.String && name.Len() > 0 {
			return name.String()
		}
	}
	return strconv.Itoa(i + 1)
}

// detach gives v its own copy of everything behind pointers and slices.
func detach(v reflect.Value) {
	switch v.Kind() {
	case reflect.Pointer:
		if v.IsNil() {
			return
		}
		own := reflect.New(v.Type().Elem())
		own.Elem().Set(v.Elem())
		v.Set(own)
		detach(own.Elem())
	case reflect.Slice:
		if v.IsNil() {
			return
		}
		own := reflect.MakeSlice(v.Type(), v.Len(), v.Len())
		reflect.Copy(own, v)
		v.Set(own)
		for i := range own.Len() {
			detach(own.Index(i))
		}
	case reflect.Struct:
		for i := range v.NumField() {
			if v.Type().Field(i).IsExported() {
				detach(v.Field(i))
			}
		}
	}
}
