package stock

import "forel/geometry"

// Densities in kg/m³ where neither a density nor a grammage is given. All are
// from memory: grey board of 2 mm is sold at about 1,250 g/m², text paper of
// 0.15 mm at about 120 g/m², starched cloth of 0.35 mm at about 230 g/m². A
// millboard may be half as heavy again: weigh a sheet.
var densities = map[geometry.Material]float64{
	geometry.Board:  625,
	"card":          800,
	geometry.Lining: 800,
	geometry.Paper:  800,
	geometry.Cloth:  650,
}

// corrugated is the grammage in g/m² of corrugated board with one wall, about the same
// whatever its flutes (from memory). Its density would tell nothing: it is mostly air.
const corrugated = 450

// DefaultDensity returns the density taken for a material, in kg/m³, and where it
// comes from.
func DefaultDensity(m geometry.Material) (density float64, source string) {
	return densities[m.Like()], "a usual density: weigh a sheet and give its grammage"
}

// OrWeighs returns the stock with a grammage in g/m² where it tells of no weight itself.
func (s Stock) OrWeighs(grammage float64) Stock {
	if s.Grammage == 0 && s.Density == 0 {
		s.Grammage = grammage
	}
	return s
}

// Grams returns the weight of an area of the stock, in mm², at a thickness, and
// where the figure comes from.
func (s Stock) Grams(area float64, thickness Length) (grams float64, source string) {
	const perSquareMetre = 1e-6
	if s.Grammage > 0 {
		return area * perSquareMetre * s.Grammage, "the grammage given"
	}
	density, source := s.Density, "the density given"
	if density == 0 && s.Material == geometry.Corrugated {
		return area * perSquareMetre * corrugated, "a usual grammage of corrugated board: weigh a sheet and give card.grammage"
	}
	if density == 0 {
		density, source = DefaultDensity(s.Material)
	}
	return area * perSquareMetre * thickness.MM() * density, source // 1 mm of 1 kg/m³ is 1 g/m²
}
