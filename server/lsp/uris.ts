// URIs and the paths that the engine knows files by: absolute, decoded, with forward slashes; other schemes keep theirs.
const shape = /^([A-Za-z][A-Za-z0-9+.-]*):(\/\/[^/?#]*)?([^?#]*)(\?[^#]*)?(?:#.*)?$/s;

/** `file:///a%20b/c.gate` is `/a b/c.gate`; `vscode-vfs://host/a/c.gate` stays what it is, decoded. Any text gives a path. */
export function pathOf(uri: string): string {
  const match = shape.exec(uri);
  if (match === null) return decoded(uri);
  const [, scheme = '', authority = '', rawPath = '', query = ''] = match;
  const raw = decoded(rawPath);
  const path = (raw.startsWith('/') ? raw : '/' + raw).replace(/^\/([A-Z]):/, (_, drive: string) => `/${drive.toLowerCase()}:`);
  if (scheme.toLowerCase() === 'file')
    return (authority === '//' || authority === '' || authority === '//localhost' ? '' : authority) + path;
  return `${scheme}:${authority}${path}${query.replaceAll('/', '%2F')}`;
}

/** The URI of a path that no client has given a URI for. */
export function uriOf(path: string): string {
  const match = /^([A-Za-z][A-Za-z0-9+.-]+:(?:\/\/[^/]*)?)(\/.*)$/s.exec(path);
  if (match !== null) return match[1] + encoded(match[2] as string);
  if (path.startsWith('//')) {
    const slash = path.indexOf('/', 2);
    return `file:${slash < 0 ? path : path.slice(0, slash) + encoded(path.slice(slash))}`;
  }
  return `file://${encoded(path)}`;
}

const encoded = (path: string): string => path.split('/').map(segment).join('/');

function segment(text: string): string {
  try {
    return encodeURIComponent(text);
  } catch {
    // Half a surrogate pair: no URI can say it.
    return encodeURIComponent(text.replace(/[\ud800-\udfff]/g, '\ufffd'));
  }
}

function decoded(text: string): string {
  try {
    return decodeURIComponent(text);
  } catch {
    return text;
  }
}

/** True for paths on a disk. */
export const isOnDisk = (path: string): boolean => path.startsWith('/');

/** True when a path is a folder or stands inside it. */
export const isInside = (path: string, folder: string): boolean =>
  path === folder || path.startsWith(folder.endsWith('/') ? folder : folder + '/');
