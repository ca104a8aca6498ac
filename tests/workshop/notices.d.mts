export const noticesFile: string;
export function noticesFor(folders: readonly string[], root: string): string;
export function packagesNamed(notices: string): Set<string>;
