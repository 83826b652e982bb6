package axle

// A Bench is a set of readings taken on one unit on the bench, to narrow how
// stiff its casting is.
type Bench struct {
	Enquiry  string         `yaml:"enquiry"` // the unit's enquiry file, beside this one; what is fitted stands there
	Note     string         `yaml:"note,omitempty"`
	Readings []BenchReading `yaml:"readings"`
}

// A BenchReading is one dial reading on the back face of the crown wheel under
// a known load: a torque at the pinion with both wheels held, or a jack on the
// back face. Its spread is the error of the instrument.
type BenchReading struct {
	Name       string `yaml:"name"`
	Torque     Torque `yaml:"pinion_torque,omitempty" range:">= 0"` // N·m, at the pinion, wheels held
	Flank      Flank  `yaml:"flank,omitempty"`                      // the one the torque loads
	Jack       Force  `yaml:"jack,omitempty" range:">= 0"`          // N, on the back face, towards the pinion
	JackRadius Length `yaml:"jack_radius,omitempty"`                // m, from the wheel's axis
	JackAngle  Angle  `yaml:"jack_angle,omitempty" range:"any"`     // rad, round the wheel from the mesh
	DialRadius Length `yaml:"dial_radius,omitempty"`                // m; the casting's own where left out
	DialAngle  Angle  `yaml:"dial_angle,omitempty" range:"any"`     // rad, round the wheel from the mesh
	Reading    Length `yaml:"reading" range:"any"`                  // m, away from the pinion, from the axle at rest
}

// LoadBench reads bench readings and the enquiry and catalogue of the unit they
// were taken on.
//
// Errors: Findings for everything wrong with the data, each with file and line.
func LoadBench(path string) (Bench, Enquiry, Catalogue, error) {
	var b Bench
	r := newReading()
	r.file(path, &b)
	if !r.broken {
		r.checkBench(&b)
	}
	if err := r.found.errorOrNil(); err != nil {
		return b, Enquiry{}, Catalogue{}, err
	}
	e, c, err := LoadEnquiry(beside(path, b.Enquiry))
	return b, e, c, err
}

func (r *reading) checkBench(b *Bench) {
	if len(b.Readings) == 0 {
		r.about("readings", "there are none; one under each of two torques is the least")
	}
	for _, one := range b.Readings {
		field := "readings[" + one.Name + "]"
		switch {
		case one.Torque.Given() == one.Jack.Given():
			r.about(field, "expected either pinion_torque or jack, and not both")
		case one.Torque.Given() && one.Flank != DriveFlank && one.Flank != CoastFlank:
			r.about(field, "a torque needs its flank: drive or coast")
		case one.Jack.Given() && !one.JackRadius.Given():
			r.about(field, "a jack needs jack_radius, how far from the wheel's axis it pushes")
		case one.Reading.Low == one.Reading.High:
			r.about(field+".reading", "the reading needs the error of the instrument, such as 0.12 mm ± 0.005 mm")
		}
	}
}
