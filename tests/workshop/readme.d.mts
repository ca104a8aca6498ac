export function relativeLinks(text: string): string[];
export function packedReadme(readme: string, has: (path: string) => boolean, moved?: Readonly<Record<string, string>>): string;
