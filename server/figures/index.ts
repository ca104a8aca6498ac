// The figures room. `all.ts` is generated from the folders.
export { allFigures } from './all.ts';
export type { Figure, FigureKind, Give, Input, Source, Standing, Topic } from './kind.ts';
export { inDegrees, mechanics, topics } from './kind.ts';
export { figuresOf, idOf, workingFigures } from './work.ts';
