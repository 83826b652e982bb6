// Package drawing makes the program's pictures: the ladder of give-out torques,
// the peg curve, the bars of doubt, the sketches that stand at the steps of the
// bench. A picture is data, shapes in millimetres on
// paper, which a back end turns into a file; nothing here computes an answer.
//
// Every picture can be read in black and white and by a screen reader: what it
// says is in words, symbols and patterns first and in a tone last.
package drawing
