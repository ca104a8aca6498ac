export { version } from '../engine/inside.ts';
