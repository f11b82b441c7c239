package jobfile

import (
	"strconv"
	"strings"

	"forel/geometry/job"
	"forel/geometry/kinds"
	"forel/geometry/plan"
)

// The keys that tell what is made.
var (
	kindWords    = job.Setting{Key: "kind", What: "what is made", Words: kinds.Names()}
	construction = job.Setting{Key: "construction", What: "what the case is made of", Words: kinds.Constructions()}
)

// kind reads what is made.
func (r *reader) kind() plan.Kind {
	way := r.word(construction)
	k, _ := kinds.Find(r.word(kindWords), way)
	if v, ok := r.get(construction.Key); ok && k.Construction == "" && way != construction.Words[0] {
		for _, other := range kinds.All {
			if other.Construction == way {
				r.foreign(construction.Key, v, k, other)
			}
		}
	}
	return k
}

// word reads one of a few words; where it is not set, the first.
func (r *reader) word(s job.Setting) string {
	if v, ok := r.get(s.Key); ok {
		return r.choice(v, s)
	}
	return s.Words[0]
}

// others reads the settings that only other kinds than the job's have: each is
// held against its limits, and one that is not at its default is told of.
func (r *reader) others(of plan.Kind, own job.Settings) {
	known := map[string]bool{}
	for _, s := range own {
		known[s.Key] = true
	}
	for _, other := range kinds.All {
		usual := other.New(r.usual).Settings()
		for i, s := range other.New(r.usual).Settings() {
			v, ok := r.get(s.Key)
			if !ok || known[s.Key] {
				continue
			}
			known[s.Key] = true
			r.read(v, s)
			switch {
			case s.Readings != nil:
				r.refuse(v.at, of.About+" has no carcass that stands before it is covered", "leave it out")
			case !s.Same(usual[i]) && !v.at.shop: // a shop serves every kind
				r.foreign(s.Key, v, of, other)
			}
		}
	}
}

// foreign tells of a key that the kind of the job has no use for.
func (r *reader) foreign(key string, v value, of, other plan.Kind) {
	r.suspects = append(r.suspects, job.Problem{Key: key, Value: written(v), Reason: "is for " + other.About + "; " + of.About + " has none of it",
		Fix: "leave it out, or give " + telling(of, other)})
}

// telling says which keys make another kind of a job.
func telling(from, to plan.Kind) string {
	var words []string
	if to.Name != from.Name {
		words = append(words, kindWords.Key+" = "+strconv.Quote(to.Name))
	}
	if first, _ := kinds.Find(to.Name, ""); to.Construction != from.Construction && (to.Name == from.Name || to.Construction != first.Construction) {
		words = append(words, construction.Key+" = "+strconv.Quote(to.Construction))
	}
	return strings.Join(words, " and ")
}
