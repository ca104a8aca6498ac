// Generated from the folders of this room by `npm run generate`. Do not edit.

import type { FigureKind } from './figure.ts';

export const allFigures: readonly FigureKind[] = [
];
