package loadpath

const (
	perSeat    = 5 // movements of a seat: axial, radial 1 and 2, turns about both
	maxSeats   = 4
	maxSeatDOF = perSeat * maxSeats
	maxExtra   = 2                     // seats that give differently towards the cap
	maxUnknown = maxSeatDOF + maxExtra // approaches of the bearings, then give of the caps
	maxNatural = 14                    // ways in which shafts deform between their bearings
	maxLoads   = 11                    // five at each loaded point, one at the peg's foot
)

// structure is everything linear between the bearings: shafts, seats, casting.
//
// Its unknowns y are the displacements of the cones in their cups, five a
// bearing, and the give of the side seats along the caps. A shaft is taken by
// the ways in which it can deform between two bearings (stretch, and an end
// slope at either bearing in either plane) and their compliance, so that a free
// shaft is exactly free however stiff or soft its seats are:
//
//	ζ = B·(d + D·e − o) + Z·ℓ,  Φ·n = ζ,  R = R_p·ℓ − Bᵀ·n
//
// with d the displacements of the cones, e the give of the caps, o the preload,
// ℓ the loads at the loaded points and R the forces on the cups. Eliminating n
// leaves a stiffness K against y, the force F·ℓ on y, and the compliance G of
// the loaded points at fixed y.
type structure struct {
	nd, ne, nu, nz, nl int

	k [maxUnknown][maxUnknown]float64
	f [maxUnknown][maxLoads]float64
	g [maxLoads][maxLoads]float64

	seat  [maxSeatDOF][maxSeatDOF]float64 // compliance of the seats without the caps' give
	extra [maxSeatDOF][maxExtra]float64   // D
	foot  [maxSeatDOF]float64             // movement of the seats by a force at the peg's foot

	spigot  [2]int                          // rows of the spigot's forces, −1 where there is none
	way     [maxNatural][maxUnknown]float64 // B·(1 D): the shafts' own deformation by y
	inverse [maxNatural][maxNatural]float64 // Φ⁻¹
	strain  [maxNatural][maxLoads]float64   // Z
	preload [maxNatural]float64             // −B·o
	direct  [maxUnknown][maxLoads]float64   // R_p on y
}

// mounted is a shaft in its two seats.
type mounted struct {
	beam            *beam
	spigotStiffness float64 // N/m; zero where there is none
}

// footLoad is the column of a force at the peg's foot.
const footLoad = 10

// assemble builds the structure of one or two shafts. The seats' compliance,
// the caps' directions, the preload offsets and the foot stand already.
func (s *structure) assemble(shafts []mounted, offset *[maxSeatDOF]float64, footFoot float64) bool {
	s.nd, s.nl = 2*perSeat*len(shafts), 5*len(shafts)
	s.nu = s.nd + s.ne
	s.spigot = [2]int{-1, -1}
	if len(shafts) == 2 {
		s.nl = maxLoads
	}
	var b [maxNatural][maxSeatDOF]float64 // B
	var rp [maxSeatDOF][maxLoads]float64  // R_p
	var own [maxLoads][maxLoads]float64   // compliance of shafts on rigid supports
	phi, z := &s.inverse, &s.strain
	*phi, *z = [maxNatural][maxNatural]float64{}, [maxNatural][maxLoads]float64{}
	s.nz, s.preload = 0, [maxNatural]float64{}
	for i, m := range shafts {
		s.addShaft(m, 2*perSeat*i, 5*i, &b, phi, z, &rp, &own)
	}
	// Seats' movement by the loads: C·R_p, and the foot's own column.
	var moved [maxSeatDOF][maxLoads]float64
	for i := range s.nd {
		for l := range s.nl {
			for j := range s.nd {
				moved[i][l] += s.seat[i][j] * rp[j][l]
			}
		}
		if s.nl == maxLoads {
			moved[i][footLoad] += s.foot[i]
		}
	}
	// B·C and Φ = φ + B·C·Bᵀ, Z = B·(C·R_p + c) − z.
	for r := range s.nz {
		var bc [maxSeatDOF]float64
		for i := range s.nd {
			if b[r][i] == 0 {
				continue
			}
			for j := range s.nd {
				bc[j] += b[r][i] * s.seat[i][j]
			}
			for l := range s.nl {
				z[r][l] += b[r][i] * moved[i][l]
			}
			s.preload[r] -= b[r][i] * offset[i]
		}
		for q := range s.nz {
			for j := range s.nd {
				phi[r][q] += bc[j] * b[q][j]
			}
		}
	}
	if !invert(phi, s.nz) {
		return false
	}
	byLoad := s.condense(&b, &rp)
	for l := range s.nl {
		for m := range s.nl {
			v := own[l][m]
			for i := range s.nd {
				v += rp[i][l] * moved[i][m]
			}
			for r := range s.nz {
				v -= z[r][l] * byLoad[r][m]
			}
			s.g[l][m] = v
		}
	}
	if s.nl == maxLoads {
		for l := range s.nl {
			for i := range s.nd {
				s.g[footLoad][l] += s.foot[i] * rp[i][l]
			}
		}
		s.g[footLoad][footLoad] += footFoot
	}
	return true
}

// condense eliminates the natural forces n = Φ⁻¹·ζ and returns Φ⁻¹·Z.
func (s *structure) condense(b *[maxNatural][maxSeatDOF]float64, rp *[maxSeatDOF][maxLoads]float64) (byLoad [maxNatural][maxLoads]float64) {
	s.way, s.direct = [maxNatural][maxUnknown]float64{}, [maxUnknown][maxLoads]float64{}
	for r := range s.nz {
		copy(s.way[r][:s.nd], b[r][:s.nd])
		for e := range s.ne {
			for i := range s.nd {
				s.way[r][s.nd+e] += b[r][i] * s.extra[i][e]
			}
		}
	}
	for l := range s.nl {
		for i := range s.nd {
			s.direct[i][l] = rp[i][l]
			for e := range s.ne {
				s.direct[s.nd+e][l] += s.extra[i][e] * rp[i][l]
			}
		}
	}
	var byPlace [maxNatural][maxUnknown]float64
	for r := range s.nz {
		for q := range s.nz {
			x := s.inverse[r][q]
			if x == 0 {
				continue
			}
			for j := range s.nu {
				byPlace[r][j] += x * s.way[q][j]
			}
			for l := range s.nl {
				byLoad[r][l] += x * s.strain[q][l]
			}
		}
	}
	for i := range s.nu {
		s.k[i], s.f[i] = [maxUnknown]float64{}, s.direct[i]
		for r := range s.nz {
			x := s.way[r][i]
			if x == 0 {
				continue
			}
			for j := range s.nu {
				s.k[i][j] += x * byPlace[r][j]
			}
			for l := range s.nl {
				s.f[i][l] -= x * byLoad[r][l]
			}
		}
	}
	return byLoad
}

// addShaft enters the rows and columns of one shaft.
func (s *structure) addShaft(m mounted, dof, load int, b *[maxNatural][maxSeatDOF]float64, phi *[maxNatural][maxNatural]float64, z *[maxNatural][maxLoads]float64, rp *[maxSeatDOF][maxLoads]float64, own *[maxLoads][maxLoads]float64) {
	bm := m.beam
	first, second := dof, dof+perSeat
	r := s.nz
	b[r][first], b[r][second] = -1, 1 // stretch
	phi[r][r] = bm.stretch[0][0]
	z[r][load] = -bm.stretch[0][1]
	rp[first][load] = 1
	own[load][load] = bm.stretch[1][1]
	r++
	// Planes 1 and 2. A moment that turns the axis towards radial 2 is negative
	// about radial 1.
	for plane := 1; plane <= 2; plane++ {
		shift, turn, sign := plane, 3-plane+2, 1.0
		if plane == 2 {
			sign = -1
		}
		force, moment := load+shift, load+turn
		rows := [2]int{r, r + 1}
		for end, row := range rows {
			b[row][dof+perSeat*end+turn] = sign
			b[row][first+shift], b[row][second+shift] = 1/bm.span, -1/bm.span
			for other, row2 := range rows {
				phi[row][row2] = bm.bending[end][other]
			}
			z[row][force] = -bm.bending[end][pointForce]
			z[row][moment] = -sign * bm.bending[end][pointMoment]
		}
		r += 2
		f1, f2 := bm.reactions(pointForce)
		m1, m2 := bm.reactions(pointMoment)
		rp[first+shift][force], rp[second+shift][force] = -f1, -f2
		rp[first+shift][moment], rp[second+shift][moment] = -sign*m1, -sign*m2
		own[force][force] = bm.bending[pointForce][pointForce]
		own[moment][moment] = bm.bending[pointMoment][pointMoment]
		own[force][moment] = sign * bm.bending[pointForce][pointMoment]
		own[moment][force] = own[force][moment]
		if m.spigotStiffness > 0 {
			s.spigot[plane-1] = r
			f1, f2 := bm.reactions(atSpigot)
			b[r][first+shift], b[r][second+shift] = f1, f2
			for end, row := range rows {
				phi[r][row], phi[row][r] = bm.bending[atSpigot][end], bm.bending[end][atSpigot]
			}
			phi[r][r] = bm.bending[atSpigot][atSpigot] + 1/m.spigotStiffness
			z[r][force] = -bm.bending[atSpigot][pointForce]
			z[r][moment] = -sign * bm.bending[atSpigot][pointMoment]
			r++
		}
	}
	s.nz = r
}

// cups returns the movement of the cups for forces on them, the give of the
// caps and a force at the peg's foot.
func (s *structure) cups(force *[maxSeatDOF]float64, give *[maxExtra]float64, foot float64) (moved [maxSeatDOF]float64) {
	for i := range s.nd {
		v := s.foot[i] * foot
		for j := range s.nd {
			v += s.seat[i][j] * force[j]
		}
		for e := range s.ne {
			v += s.extra[i][e] * give[e]
		}
		moved[i] = v
	}
	return moved
}
