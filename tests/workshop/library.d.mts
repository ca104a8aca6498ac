export function writeLibrary(to: string): Promise<void>;
export function packLibrary(library: string, to: string): string;
export function reachable(read: (path: string) => string, entry: string): Map<string, string>;
