// Stands in for vitest in the bundle: the same words, but the tests are only gathered, and run by the worker as often as it likes.
export const registered = [];
const names = [];
let file = '';

export function testFile(path) {
  file = path;
  globalThis.__gathers?.(path);
}

export const expect = globalThis.__expect;

function add(name, first, second) {
  const run = typeof first === 'function' ? first : second;
  registered.push({ file, name: [...names, name].join(' > '), run });
}

/** The name of one case, near enough to what vitest writes. */
function named(pattern, one, i) {
  let at = 0;
  const given = Array.isArray(one) ? one : [one];
  const text = pattern
    .replace(/%[sdifjo#]/g, (mark) => (mark === '%#' ? String(i) : String(given[at++])))
    .replace(/\$(\w+)/g, (all, key) => String(given[0]?.[key] ?? all));
  return text === pattern ? `${text} #${i}` : text;
}
const each = (one) => (cases) => (name, first, second) =>
  [...cases].forEach((given, i) => {
    const run = typeof first === 'function' ? first : second;
    one(named(name, given, i), () => (Array.isArray(given) ? run(...given) : run(given)));
  });

export const test = Object.assign((name, first, second) => add(name, first, second), { each: each(add) });
export const it = test;

function group(name, body) {
  names.push(name);
  try {
    body();
  } finally {
    names.pop();
  }
}
export const describe = Object.assign(group, { each: each(group) });
