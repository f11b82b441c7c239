package plan

// Tools lists what to lay ready for the work at the bench (common practice, no
// source); what there is to fold and to brush with, and which adhesive, differs
// from kind to kind.
func Tools(folder, adhesive string) []string {
	return []string{
		"sharp knife with fresh blades, heavy steel straightedge, cutting mat, square",
		"pencil, ruler, awl or pin for pricking through, fine sandpaper",
		folder,
		"two pressing boards larger than the case, weights, release paper (silicone or waxed), waste paper",
		adhesive,
		"caliper, if you can borrow one",
	}
}
