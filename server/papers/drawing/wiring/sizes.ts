// Sizes of the wiring diagram, in units of the drawing.
export const pitch = 26;
export const boxWidth = 384;
export const laneWidth = 9;
export const textLine = 16;
export const padding = 8;
/** Between the last lane and the boxes, with the first bend. */
export const bendRoom = 56;
/** From the terminals to the first lane. */
export const firstLane = 18;
export const resistorRoom = 128;

/** The middle of a row, from the top of the strip. */
export const rowMiddle = (row: number): number => row * pitch + pitch / 2;
