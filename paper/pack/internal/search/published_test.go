package search

import (
	"encoding/csv"
	"fmt"
	"os"
	"runtime"
	"strconv"
	"strings"
	"syscall"
	"testing"
	"time"
)

type instance struct {
	class int
	p     *Problem
}

func published(t testing.TB) []instance {
	name := os.Getenv("FOREL_PACKING")
	if name == "" {
		t.Skip("FOREL_PACKING does not name the file of instances")
	}
	f, err := os.Open(name)
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	r := csv.NewReader(f)
	r.Comment = '#'
	rows, err := r.ReadAll()
	if err != nil {
		t.Fatal(err)
	}
	var all []instance
	for _, row := range rows[1:] {
		in := instance{p: &Problem{Free: os.Getenv("FREE") != ""}}
		in.class, _ = strconv.Atoi(row[0])
		w, _ := strconv.Atoi(row[3])
		h, _ := strconv.Atoi(row[4])
		in.p.Kinds = []Kind{{W: w, H: h, Cost: 1}}
		for _, s := range strings.Fields(row[5]) {
			a, b, _ := strings.Cut(s, "x")
			w, _ := strconv.Atoi(a)
			h, _ := strconv.Atoi(b)
			in.p.Items = append(in.p.Items, Item{W: w, H: h, Turn: true})
		}
		all = append(all, in)
	}
	return all
}

func envInt(k string, d int) int {
	if v, err := strconv.Atoi(os.Getenv(k)); err == nil {
		return v
	}
	return d
}

func TestPublished(t *testing.T) {
	all := published(t)
	runtime.GOMAXPROCS(1)
	runtime.LockOSThread()
	limit := time.Duration(envInt("MS", 10)) * time.Millisecond
	only := envInt("CLASS", 0)
	var first, bins, bounds, its, open [11]int
	var used [11]time.Duration
	for _, in := range all {
		if only != 0 && in.class != only {
			continue
		}
		for _, c := range []int{0, in.class} {
			_ = c
		}
		begin := cpu()
		f := 0
		s := in.p.Solve(1, func(int) float64 { return float64(cpu()-begin) / float64(limit) }, func(s *Solution) {
			if f == 0 {
				f = len(s.Bins)
			}
		})
		it, lb := s.Steps, int(s.Bound)
		took := (cpu() - begin)
		for _, c := range []int{0, in.class} {
			first[c] += f
			bins[c] += len(s.Bins)
			bounds[c] += lb
			its[c] += it
			used[c] += took
			if len(s.Bins) > lb {
				open[c]++
			}
		}
	}
	for c := 1; c <= 11; c++ {
		c := c % 11
		fmt.Printf("class %2d first %5d bins %5d bound %5d open %3d its %9d time %v\n", c, first[c], bins[c], bounds[c], open[c], its[c], used[c].Round(time.Millisecond))
	}
}

// cpu gives the processor time of the process, which other load leaves alone.
func cpu() time.Duration {
	var r syscall.Rusage
	syscall.Getrusage(1, &r)
	return time.Duration(r.Utime.Nano() + r.Stime.Nano())
}
