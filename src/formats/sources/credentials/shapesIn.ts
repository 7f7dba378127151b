import type { Span } from '#core/place.ts';
import secretShapes from '../tables/secretShapes.json';
import { isPlaceholder, type SecretKind } from './judgeCredential.ts';

/** A credential found in a text; `name` is what the text calls it. */
export interface FoundSecret {
  readonly kind: SecretKind;
  readonly name: string | null;
  readonly span: Span;
}

const shapes = secretShapes.shapes.map(({ kind, pattern }) => ({
  kind: kind as SecretKind,
  pattern: new RegExp(pattern, 'gd'),
}));

/** Credentials that are known by their shape: tokens, private keys, addresses that carry a password. */
export function shapesIn(text: string): FoundSecret[] {
  return shapes.flatMap(({ kind, pattern }) =>
    [...text.matchAll(pattern)].flatMap((match) => {
      const [start, end] = match.indices?.[1] ?? match.indices?.[0] ?? [0, 0];
      const content = text.slice(start, end);
      const password = kind === 'url-credentials' ? content.slice(content.indexOf(':') + 1) : content;
      return isPlaceholder(password) || /EXAMPLE$/.test(content)
        ? []
        : [{ kind, name: null, span: [start, end] as const }];
    }),
  );
}
