// The figures room. `all.ts` is generated from the folders.
export { allFigures } from './all.ts';
export { inDegrees, topics, type Figure, type FigureKind, type Give, type Input, type Source, type Standing, type Topic } from './figure.ts';
export { figuresOf, idOf } from './work.ts';
