// Which files are worth a `use`.

/** True for a text that declares a model, found without reading it: enough to offer a file for `use`. */
export const holdsModels = (text: string): boolean => /^[^\S\r\n]*(?:panel|drive|sensor|cable)-model\b/m.test(text);
