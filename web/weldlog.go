package web

import (
	"math"
	"net/url"
	"slices"
	"strconv"
	"strings"

	"axlewright/document"
	"axlewright/quantity"
	"axlewright/shop"
	"axlewright/weldplan"
)

// A runShow is one run of weld: what the plan says and what was really used.
type runShow struct {
	Name    string
	Planned *weldplan.OrderRow // nil where no plan has it
	Fields  []runField
	Logged  bool
	Next    bool // the first that is not logged
}

// read are the boxes that are read at the bench, known those that the plan knows.
func (r runShow) read() []runField  { return r.Fields[:readItems] }
func (r runShow) known() []runField { return r.Fields[readItems:] }

// A runField is one box of a run. Value is what stands in the record, or what
// the plan offers where nothing does.
type runField struct {
	Field   shop.Field
	Slot    shop.Slot
	Entry   *shop.Entry
	Last    int64
	Value   string
	Offered bool // by the plan; not written until the run is
}

// loggedItems are the boxes of a run, in the order in which they are filled.
var loggedItems = []string{"amps", "volts", "minutes", "lot", "interpass", "start", "runs", "process", "position", "plate", "length"}

// readItems is how many of them are read at the bench; the plan knows the others.
const readItems = 6

// A weldLogShow is the weld log of a job.
type weldLogShow struct {
	Job    *shop.Job
	Role   shop.Role
	Stops  []shop.StandingStop
	Runs   []runShow
	Lots   []shop.LotView
	Plan   *keptPlan
	May    bool
	Signed bool // a certificate was given: a change needs its reason
}

// weldLogPage shows what each run took, and takes it down.
func weldLogPage(v *visit) error {
	j, err := v.job()
	if err != nil {
		return err
	}
	s := weldLogShow{Job: j, Role: v.who.Role, May: v.who.Role.MayRecord("weld"), Signed: len(j.Certificates()) > 0}
	if view, ok := j.Step("weld"); ok {
		s.Stops = view.Stops
	}
	if s.Plan, err = v.newestPlan(j); err != nil {
		return err
	}
	if s.Lots, _, err = v.shop.Lots(v.ctx(), shop.CardQuery{Group: string(shop.LotFiller), Limit: 200}); err != nil {
		return err
	}
	s.Runs = runsOf(j, s.Plan)
	if name := strings.TrimSpace(v.r.URL.Query().Get("run")); name != "" && !hasRun(s.Runs, name) {
		s.Runs = append(s.Runs, runOf(j, name, nil, nil))
	}
	for i := range s.Runs {
		if !s.Runs[i].Logged {
			s.Runs[i].Next = true
			break
		}
	}
	return v.show(weldLogSheet(v.frame("Weld log").ofJob(j), s))
}

// weldLogPaper is the weld log as a sheet: what is not written yet is for the pencil.
func weldLogPaper(v *visit) error {
	j, err := v.job()
	if err != nil {
		return err
	}
	plan, err := v.newestPlan(j)
	if err != nil {
		return err
	}
	head, err := v.paperHead(j, "Weld log")
	if err != nil {
		return err
	}
	var runs []document.LoggedRun
	for _, r := range runsOf(j, plan) {
		runs = append(runs, r.onPaper())
	}
	step, _ := shop.StepOf("weld")
	return v.sendPaper(document.WeldLog(runs, head, step.Cautions))
}

// onPaper is the run as a row of the sheet.
func (r runShow) onPaper() document.LoggedRun {
	row := document.LoggedRun{Run: r.Name}
	if r.Planned != nil {
		row.Turn, row.Planned = itoa(r.Planned.Turn), r.Planned.Plate+": "+r.Planned.BeadsShort+"; "+r.Planned.AmpsShort
	}
	for _, x := range r.Fields {
		if x.Entry == nil {
			continue
		}
		text := document.ValueText(x.Entry.Value)
		switch x.Field.Key {
		case "amps":
			row.Amps, row.Who = text, x.Entry.Who.Name
		case "volts":
			row.Volts = text
		case "minutes":
			row.Minutes = text
		case "lot":
			row.Lot = text
		case "interpass":
			row.Between = text
		}
	}
	return row
}

func hasRun(runs []runShow, name string) bool {
	for _, r := range runs {
		if r.Name == name {
			return true
		}
	}
	return false
}

// runsOf are the runs of the plan in their order, then those that only the record has.
func runsOf(j *shop.Job, plan *keptPlan) []runShow {
	var runs []runShow
	if plan != nil {
		for _, row := range plan.Plan.OrderRows() {
			runs = append(runs, runOf(j, row.Run, &row, &plan.Plan))
		}
	}
	for _, e := range j.All("weld", "amps") {
		if !hasRun(runs, e.Place) {
			runs = append(runs, runOf(j, e.Place, nil, nil))
		}
	}
	return runs
}

func runOf(j *shop.Job, name string, row *weldplan.OrderRow, plan *weldplan.Plan) runShow {
	r := runShow{Name: name, Planned: row}
	offered := map[string]string{}
	if plan != nil {
		offered = offeredBy(plan, name)
	}
	for _, item := range loggedItems {
		f, _ := shop.FieldOf("weld", item)
		slot := shop.Slot{Step: "weld", Item: item, Place: name}
		x := runField{Field: f, Slot: slot, Entry: j.Standing(slot), Last: lastSeq(j, slot)}
		if x.Entry != nil {
			x.Value = typedOf(x.Entry.Value)
			r.Logged = true
		} else if o := offered[item]; o != "" {
			x.Value, x.Offered = o, true
		}
		r.Fields = append(r.Fields, x)
	}
	return r
}

// offeredBy is what the plan knows of a run before it is welded.
func offeredBy(plan *weldplan.Plan, name string) map[string]string {
	for i := range plan.Runs {
		r := &plan.Runs[i]
		if r.Run != name {
			continue
		}
		return map[string]string{"process": string(plan.Process), "position": string(r.Position), "runs": itoa(r.Size.Passes),
			"plate": quantity.Exact(r.Thick, quantity.Length), "length": quantity.Exact(math.Round(r.Size.Length*1e4)/1e4, quantity.Length)}
	}
	return nil
}

// typedOf is a value as it goes back into its box.
func typedOf(v shop.Value) string {
	switch {
	case v.Typed != "":
		return v.Typed
	case len(v.Words) > 0:
		return v.Word()
	case v.Link != nil:
		return string(v.Link.ID)
	}
	return v.Text
}

// logRun writes what one run took, all of its boxes or none.
func logRun(v *visit) error {
	form, j, err := v.formOfJob()
	if err != nil {
		return err
	}
	name := strings.TrimSpace(form.Get("run"))
	if name == "" {
		return shop.Fault(shop.Invalid, "Say which run it is: the name in the plan, or your own.")
	}
	var sets []shop.Set
	for _, item := range append([]string{"plate"}, loggedItems...) { // the plate first: its band is what the amps are judged by
		set, wanted, err := runSet(form, j, name, item)
		if err != nil {
			return err
		}
		if wanted && !slices.ContainsFunc(sets, func(s shop.Set) bool { return s.Slot == set.Slot }) {
			sets = append(sets, set)
		}
	}
	if len(sets) == 0 {
		return shop.Fault(shop.Invalid, "Nothing is filled in for run %s.", name)
	}
	if _, err := v.shop.Record(v.ctx(), v.who, j.ID, sets...); err != nil {
		return err
	}
	return v.see(string(jobPath(j, "/weld-log")) + "#" + runID(name))
}

// runSet is one box of the form as the record takes it. A box that was filled and
// is empty now is taken back.
func runSet(form url.Values, j *shop.Job, name, item string) (shop.Set, bool, error) {
	slot := shop.Slot{Step: "weld", Item: item, Place: name}
	set := shop.Set{Slot: slot, Why: form.Get("why")}
	text := strings.TrimSpace(form.Get(item))
	set.Corrects, _ = strconv.ParseInt(form.Get("last_"+item), 10, 64)
	if text == "" {
		set.Value = shop.Withdrawn()
		return set, j.Standing(slot) != nil, nil
	}
	var err error
	f, _ := shop.FieldOf("weld", item)
	one := url.Values{"value": {text}, "unit": {f.Unit}, "card": {text}}
	if set.Value, err = valueOf(f, one); err != nil {
		return set, false, err
	}
	return set, true, nil
}

// runID is the id of a run's form in the page.
func runID(name string) string { return "run-" + url.PathEscape(strings.ReplaceAll(name, " ", "-")) }

// A learnedShow is what past welds took, by process.
type learnedShow struct {
	Entries int
	Jobs    int
	Rows    []weldplan.LearnedRow
}

// learnedPage shows what the shop's logs say of amps and minutes.
func learnedPage(v *visit) error {
	past, err := v.shop.WeldEntries(v.ctx())
	if err != nil {
		return err
	}
	s := learnedShow{Entries: len(past), Rows: weldplan.LearnAll(past)}
	seen := map[string]bool{}
	for _, e := range past {
		seen[e.Unit] = true
	}
	s.Jobs = len(seen)
	return v.show(learnedSheet(v.frame("What past welds took").at("stock"), s))
}
