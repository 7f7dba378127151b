import type { Span, TextPlace } from '#core/place.ts';
import type { SourceText } from '#core/sourceText.ts';
import { findSecretsInText, maskedPlace } from '../sources/secrets.ts';

const known = new WeakMap<SourceText, readonly Span[]>();

/** A place whose quote shows no credential, such as one in the address of a repository. */
export function placeWithoutSecrets(source: SourceText, span: Span): TextPlace {
  let secrets = known.get(source);
  if (!secrets) {
    secrets = findSecretsInText(source).map(({ place }) => place.span);
    known.set(source, secrets);
  }
  return maskedPlace(source, span, secrets);
}
