package pipeline

import (
	"fmt"

	"forel/cmd/jobfile"
)

// New gives a commented job to start from, for a unit and a sheet as they were
// typed.
func New(units, sheet string) ([]byte, error) {
	setup, unit, err := jobfile.Print("", nil, []jobfile.Flag{
		{Name: "--units", Key: "units", Value: units},
		{Name: "--paper", Key: "print.paper", Value: sheet},
	})
	if err != nil {
		return nil, err
	}
	if err := setup.Check(); err != nil {
		return nil, problems(fmt.Errorf("--paper: %w", err))
	}
	return jobfile.StarterFor(unit, setup.Sheet), nil
}
