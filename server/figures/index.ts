// The figures room. `all.ts` is generated from the folders.
export { allFigures } from './all.ts';
export { inDegrees, type Figure, type FigureKind, type Give, type Input, type Source, type Standing } from './figure.ts';
export { perSubject } from './memo.ts';
export { figuresOf } from './work.ts';
