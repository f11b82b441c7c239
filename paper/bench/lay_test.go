package bench_test

import (
	"context"
	"testing"

	"github.com/stretchr/testify/require"

	"forel/paper/bench"
)

func TestOneJob(t *testing.T) {
	p, err := bench.Lay(context.Background(), []bench.Job{job(t, "Harbour log", 221.5, 148.5, 31.75)}, bench.Options{})
	require.NoError(t, err)
	sound(t, p)
	t.Log(summary(p))
}

func TestClassOfTwenty(t *testing.T) {
	p, err := bench.Lay(context.Background(), class(t, 20), bench.Options{})
	require.NoError(t, err)
	sound(t, p)
	t.Log(summary(p))
}
