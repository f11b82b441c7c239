package pipeline_test

import (
	"os"
	"runtime"
	"runtime/pprof"
	"testing"
	"time"

	"forel/cmd/pipeline"
)

func TestZZ(t *testing.T) {
	data, _ := os.ReadFile(os.Getenv("ZZ"))
	c := pipeline.Class{Source: pipeline.Source{Files: []pipeline.File{{Name: "roster.csv", Data: data}}}, Workers: 2}
	at := time.Now()
	roll, err := c.Read()
	if err != nil {
		t.Fatal(err)
	}
	say := func(w string) {
		var m runtime.MemStats
		runtime.GC()
		runtime.ReadMemStats(&m)
		t.Logf("%s: %v live %d MB sys %d MB", w, time.Since(at), m.HeapAlloc>>20, m.Sys>>20)
		f, _ := os.Create("/tmp/safe/heap-" + w)
		pprof.WriteHeapProfile(f)
		f.Close()
	}
	say("read")
	roll.Make(t.Context(), nowhere{}, nil)
	say("made")
	f, _ := os.Create("/tmp/safe/cpu")
	pprof.StartCPUProfile(f)
	runtime.MemProfileRate = 64 << 10
	r, err := roll.Finish(t.Context(), nil)
	pprof.StopCPUProfile()
	if err != nil {
		t.Fatal(err)
	}
	say("finished")
	for _, f := range r.Files {
		t.Log(f.Name, len(f.Data))
	}
	runtime.KeepAlive(roll)
}
