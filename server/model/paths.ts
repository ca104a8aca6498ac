// Paths in `use` lines: relative, with forward slashes, and never out of the workspace.

export type UsePath = { readonly path: string } | { readonly fault: 'outside' | 'absolute' | 'backslash' | 'empty' | 'itself' };

/** The folder of a path, without its last slash. */
export function folderOf(path: string): string {
  const slash = path.lastIndexOf('/');
  return slash < 0 ? '' : path.slice(0, slash);
}

/** The file that a `use` line names. Paths and root are absolute with forward slashes (or URIs); text only, nothing is looked up. */
export function resolveUse(from: string, use: string, root: string): UsePath {
  if (use.trim() === '') return { fault: 'empty' };
  if (use.includes('\\')) return { fault: 'backslash' };
  if (use.startsWith('/') || /^[A-Za-z][A-Za-z0-9+.-]*:/.test(use)) return { fault: 'absolute' };
  const base = folderOf(from);
  const inside = root.endsWith('/') ? root.slice(0, -1) : root;
  const parts = base
    .slice(inside.length)
    .split('/')
    .filter((part) => part !== '');
  if (base !== inside && !base.startsWith(inside + '/')) return { fault: 'outside' };
  for (const part of use.split('/')) {
    if (part === '' || part === '.') continue;
    if (part !== '..') parts.push(part);
    else if (parts.pop() === undefined) return { fault: 'outside' };
  }
  const path = [inside, ...parts].join('/');
  return path === from ? { fault: 'itself' } : { path };
}

/**
 * The folder that no `use` of a file may leave where nothing else says so: the parent of the file's own
 * folder, so that `../library/…` works for a single file that is opened or named; the own folder where there is no parent.
 */
export function looseRoot(path: string): string {
  const match = /^([A-Za-z][A-Za-z0-9+.-]+:(?:\/\/[^/]*)?)?(\/.*)$/s.exec(path);
  const prefix = match?.[1] ?? '';
  const folders = (match?.[2] ?? path).split('/').slice(0, -1);
  const kept = folders.length > 2 ? folders.slice(0, -1) : folders;
  return prefix + kept.join('/');
}
