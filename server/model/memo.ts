// What is worked out of a subject is worked out once for each reading of a file, and shared by whoever asks.
// It is kept on the subject itself, which is made anew whenever its file changes, so nothing can go stale.

let marks = 0;

/** A pure function of one subject (a leaf, a drive, an installation) whose result is kept with the subject. */
export function perSubject<S extends { readonly memo: unknown[] }, R>(work: (subject: S) => R): (subject: S) => R {
  const mark = marks++;
  return (subject) => {
    // Mark and result in turns: a subject has a handful of results, and a short row is quicker to walk than to index thinly.
    const { memo } = subject;
    for (let i = 0; i < memo.length; i += 2) if (memo[i] === mark) return memo[i + 1] as R;
    const result = work(subject);
    memo.push(mark, result);
    return result;
  };
}
