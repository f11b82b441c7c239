package jobfile

// KnownKeys returns all keys of a job file.
func KnownKeys() []string { return knownKeys }
