/** Put in by the build, from package.json. */
declare const pintleVersion: string | undefined;

/** The version of all that is built of this house; 0.0.0 where it runs from its sources. */
export const version: string = typeof pintleVersion === 'string' ? pintleVersion : '0.0.0';
