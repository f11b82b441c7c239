package pack_test

import (
	"context"
	"encoding/csv"
	"fmt"
	"os"
	"runtime"
	"strconv"
	"strings"
	"syscall"
	"testing"
	"time"

	"github.com/stretchr/testify/require"

	"forel/geometry"
	"forel/paper/pack"
	"forel/paper/pack/packtest"
)

// instance is one of the published test problems for two-dimensional bin
// packing: Berkey and Wang (1987), classes 1 to 6; Martello and Vigo (1998), classes
// 7 to 10.
type instance struct {
	class int
	p     pack.Problem
}

// published reads the instances from the file that FOREL_PACKING names, which
// has a row for each: class, number of items, instance, width and height of the
// bin, the items' sizes such as 5x9 with spaces between.
func published(t *testing.T) (all []instance) {
	name := os.Getenv("FOREL_PACKING")
	if name == "" {
		t.Skip("FOREL_PACKING does not name the file of published instances")
	}
	f, err := os.Open(name)
	require.NoError(t, err)
	defer f.Close()
	r := csv.NewReader(f)
	r.Comment = '#'
	rows, err := r.ReadAll()
	require.NoError(t, err)
	number := func(s string) int {
		n, err := strconv.Atoi(s)
		require.NoError(t, err)
		return n
	}
	for _, row := range rows[1:] {
		in := instance{class: number(row[0])}
		in.p.Stock = []pack.Stock{{Width: geometry.Length(number(row[3])), Height: geometry.Length(number(row[4]))}}
		for _, s := range strings.Fields(row[5]) {
			w, h, _ := strings.Cut(s, "x")
			in.p.Items = append(in.p.Items, pack.Item{Width: geometry.Length(number(w)), Height: geometry.Length(number(h)), Turn: true})
		}
		all = append(all, in)
	}
	return all
}

// worked is a context that ends when this thread has worked for so long: on a
// busy machine the clock on the wall says little.
type worked struct {
	context.Context
	until time.Duration
}

func (w worked) Err() error {
	if work() > w.until {
		return context.DeadlineExceeded
	}
	return nil
}

// work gives the processor time of this thread.
func work() time.Duration {
	var r syscall.Rusage
	if err := syscall.Getrusage(syscall.RUSAGE_THREAD, &r); err != nil {
		panic(err)
	}
	return time.Duration(r.Utime.Nano() + r.Stime.Nano())
}

// The totals over the published instances, for the time that FOREL_PACKING_MS
// gives an instance (10 if it is not set), one thread: bins first found, bins,
// bound, instances not proved optimal. FOREL_PACKING_CLOCK=thread counts the thread's
// own time instead of the clock's, FOREL_PACKING_CLASS chooses one class.
func TestPublishedInstances(t *testing.T) {
	all := published(t)
	defer runtime.GOMAXPROCS(runtime.GOMAXPROCS(1))
	runtime.LockOSThread()
	limit := 10 * time.Millisecond
	if ms, err := strconv.Atoi(os.Getenv("FOREL_PACKING_MS")); err == nil {
		limit = time.Duration(ms) * time.Millisecond
	}
	for _, mode := range []string{"guillotine", "free"} {
		if only := os.Getenv("FOREL_PACKING_MODE"); only != "" && only != mode {
			continue
		}
		var first, bins, bound, open [11]int
		begin := time.Now()
		for _, in := range all {
			if c := os.Getenv("FOREL_PACKING_CLASS"); c != "" && c != strconv.Itoa(in.class) {
				continue
			}
			in.p.Free = mode == "free"
			e, ctx := pack.Effort{Time: limit, Seed: 1}, context.Background()
			begun := pack.Solve(ctx, in.p, pack.Effort{})
			if os.Getenv("FOREL_PACKING_CLOCK") == "thread" {
				ctx, e.Time = worked{ctx, work() + limit}, time.Hour
			}
			l := pack.Solve(ctx, in.p, e)
			require.NoError(t, packtest.Verify(l, in.p))
			for _, c := range []int{0, in.class} {
				first[c] += len(begun.Sheets)
				bins[c] += len(l.Sheets)
				bound[c] += int(l.Bound)
				if !l.Optimal {
					open[c]++
				}
			}
		}
		for c := 1; c <= 11; c++ {
			name, c := fmt.Sprint("class ", c), c
			if c == 11 {
				name, c = "all", 0
			}
			fmt.Printf("%-10s %v, %-8s first %5d  bins %5d  bound %5d  open %3d\n", mode, limit, name, first[c], bins[c], bound[c], open[c])
		}
		fmt.Printf("%-10s %v an instance, %v in all\n", mode, limit, time.Since(begin).Round(time.Second))
	}
}
