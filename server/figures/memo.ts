// A figure's workings are done once for each reading of a file and shared by figures, rules, editor and papers.
// They are kept on the subject itself, which is made anew whenever its file changes, so nothing can go stale.

let slots = 0;
const nothing = Symbol('nothing');

/** A pure function of one subject (a leaf, a drive, an installation) whose result is kept with the subject. */
export function perSubject<S extends { readonly memo: unknown[] }, R>(work: (subject: S) => R | undefined): (subject: S) => R | undefined {
  const slot = slots++;
  return (subject) => {
    const kept = subject.memo[slot];
    if (kept !== undefined) return kept === nothing ? undefined : (kept as R);
    const result = work(subject);
    subject.memo[slot] = result === undefined ? nothing : result;
    return result;
  };
}
