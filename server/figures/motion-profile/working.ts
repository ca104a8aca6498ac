// How a drive speeds up, runs and brakes. It reads no facts of a file: the timing of a leaf is worked out in run-time.
export { type Direction, type Profile, pieceAtTime, profileOf, runTime, timeAt, timeInPiece, travelAt, wholeTravel } from './maths.ts';
