/** Texts that grow in one respect each, by what grows: a text of about so many lines. */
export declare const kinds: Readonly<Record<string, (lines: number) => string>>;
