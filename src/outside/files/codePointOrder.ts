/** Order of two texts by Unicode code points: unlike `<`, characters beyond U+FFFF come last. */
export function codePointOrder(a: string, b: string): number {
  const length = Math.min(a.length, b.length);
  for (let i = 0; i < length; i++) {
    const left = a.charCodeAt(i);
    const right = b.charCodeAt(i);
    if (left !== right) return rank(left) - rank(right);
  }
  return a.length - b.length;
}

// Surrogates stand for characters beyond every other code unit.
function rank(unit: number): number {
  return unit >= 0xd800 && unit <= 0xdfff ? unit + 0x10000 : unit;
}
