// The sources of this project as text, for tests that hold for all of them.
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';

export const root = fileURLToPath(new URL('../..', import.meta.url));

export interface Source {
  /** From the root, with forward slashes. */
  readonly path: string;
  readonly text: string;
}

/** Every file under these folders (or these files) whose name ends so. */
export function sources(places: readonly string[], ends: readonly string[]): Source[] {
  const found: Source[] = [];
  const look = (path: string): void => {
    for (const entry of readdirSync(join(root, path), { withFileTypes: true })) {
      if (entry.name === 'node_modules' || entry.name === 'dist') continue;
      const inner = path === '' ? entry.name : `${path}/${entry.name}`;
      if (entry.isDirectory()) look(inner);
      else if (ends.some((end) => entry.name.endsWith(end))) found.push({ path: inner, text: readFileSync(join(root, inner), 'utf8') });
    }
  };
  for (const place of places) look(place);
  return found;
}

/** TypeScript without its remarks and without what stands in its texts (what `${}` holds is kept): only what is run. */
export function codeOnly(text: string): string {
  let out = '';
  let at = 0;
  /** Reads code up to the brace that ends a `${`, or to the end. */
  const code = (inTemplate: boolean): void => {
    let depth = 0;
    while (at < text.length) {
      const here = text.charAt(at);
      const two = text.slice(at, at + 2);
      if (two === '//') {
        while (at < text.length && text.charAt(at) !== '\n') at++;
      } else if (two === '/*') {
        const end = text.indexOf('*/', at + 2);
        at = end < 0 ? text.length : end + 2;
        out += ' ';
      } else if (here === "'" || here === '"') {
        out += here + here;
        for (at++; at < text.length && text.charAt(at) !== here; at++) if (text.charAt(at) === '\\') at++;
        at++;
      } else if (here === '`') {
        at++;
        template();
      } else if (here === '/' && /(?:^|[(,=:[!&|?{};~+\-*%<>^\n]|\breturn|\bcase|\btypeof)\s*$/.test(out.slice(-20))) {
        let inClass = false;
        for (at++; at < text.length && text.charAt(at) !== '\n' && (inClass || text.charAt(at) !== '/'); at++) {
          if (text.charAt(at) === '\\') at++;
          else if (text.charAt(at) === '[') inClass = true;
          else if (text.charAt(at) === ']') inClass = false;
        }
        at++;
        out += '/x/';
      } else {
        if (inTemplate && here === '{') depth++;
        if (inTemplate && here === '}' && depth-- === 0) return;
        out += here;
        at++;
      }
    }
  };
  const template = (): void => {
    out += '``';
    while (at < text.length) {
      const here = text.charAt(at);
      if (here === '`') {
        at++;
        return;
      }
      if (here === '\\') at += 2;
      else if (here === '$' && text.charAt(at + 1) === '{') {
        at += 2;
        out += ' ';
        code(true);
        at++;
        out += ' ';
      } else at++;
    }
  };
  code(false);
  return out;
}

/** Everything that a source imports, however it says so. */
export function importsOf(text: string): string[] {
  const bare = text.replace(/\/\*[\s\S]*?\*\//g, ' ').replace(/^\s*\/\/.*$/gm, '');
  const stated = bare.matchAll(
    /(?:^|[;\n])\s*(?:import|export)\s+(?:type\s+)?(?:[^'";]*?\sfrom\s+|\{[^}]*\}\s*from\s+|)['"]([^'"\n]+)['"]/g,
  );
  const called = bare.matchAll(/\b(?:import|require)\s*\(\s*['"`]([^'"`\n]+)['"`]/g);
  return [...stated, ...called].map(([, from]) => from ?? '');
}
