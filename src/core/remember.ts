/**
 * The same function, answering from memory what it was asked before, so that reading a text again after an edit costs
 * only what the edit touched. `compute` must depend on nothing but the text; nobody may change an answer. Memory holds
 * the answers of about the last `most` to twice as many different questions.
 */
export function remember<T>(compute: (text: string) => T, most = 5000): (text: string) => T {
  let recent = new Map<string, { readonly answer: T }>();
  let older = new Map<string, { readonly answer: T }>();
  return (text) => {
    const known = recent.get(text);
    if (known !== undefined) return known.answer;
    const kept = older.get(text) ?? { answer: compute(text) };
    if (recent.size >= most) {
      older = recent;
      recent = new Map();
    }
    recent.set(text, kept);
    return kept.answer;
  };
}

/** The same for a record that is never changed: what was computed for it is kept as long as the record itself. */
export function rememberFor<K extends object, T>(compute: (key: K) => T): (key: K) => T {
  const answers = new WeakMap<K, { readonly answer: T }>();
  return (key) => {
    const known = answers.get(key) ?? { answer: compute(key) };
    answers.set(key, known);
    return known.answer;
  };
}
