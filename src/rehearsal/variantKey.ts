/** A variant's name as it is compared: 'USB-C', 'usb c' and 'USBC' are one. */
export type VariantKey = string;

export function variantKey(name: string): VariantKey {
  return name.toLowerCase().replace(/[^\p{L}\p{N}]+/gu, '');
}

/** The variants that one fact names: one, or several where each also stands alone elsewhere; null where it says all. */
export function variantsNamed(written: string, known: ReadonlySet<VariantKey>): readonly VariantKey[] | null {
  const key = variantKey(written);
  if (key === '' || /^(?:all|both|any|every|each)\b/i.test(written.trim())) return null;
  const several = written.split(/\s*[,;/&+]\s*|\s+(?:and|or)\s+/i).map(variantKey);
  return several.length > 1 && several.every((one) => known.has(one)) ? several : [key];
}
