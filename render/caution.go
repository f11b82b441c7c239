package render

// MachineCaution stands in every drawing that a laser or a drag knife may be fed
// with.
const MachineCaution = "Before cutting by machine: read the maker's manual and follow local rules. " +
	"Never put chlorinated plastics (PVC, some coated cloths) under a laser; never leave a laser or knife running unattended; " +
	"use fume extraction and keep means to put out a fire at hand."
