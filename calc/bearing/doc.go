// Package bearing holds the published formulas of single-row tapered roller
// bearings: ratings from roller geometry (ISO 281, ISO 76), equivalent loads,
// the thrust that a pair induces in itself, basic and modified life, life
// under a duty, reliability, the load on the hardest pressed roller, reference
// life from lamina loads (ISO/TS 16281) and turning torque against preload.
//
// A life of this package is a rating: nine bearings of ten reach it when they
// are clean, square and oiled as assumed. It is a comparison between builds,
// never a promise for one bearing.
package bearing
