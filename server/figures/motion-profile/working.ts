// How a drive speeds up, runs and brakes. It reads no facts of a file: the timing of a leaf is worked out in run-time.
export { pieceAtTime, profileOf, runTime, timeAt, timeInPiece, travelAt, wholeTravel, type Direction, type Profile } from './maths.ts';
