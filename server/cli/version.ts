/** Put in by the build, from package.json. */
declare const pintleVersion: string | undefined;

export const version: string = typeof pintleVersion === 'string' ? pintleVersion : '0.0.0';
