// The preview's page by itself, in a browser: see preview/page.mjs.
export { runLayer } from './preview/page.mjs';
