import type { Secret } from '#core/code.ts';
import type { Span, TextPlace } from '#core/place.ts';
import { placeOf, type SourceText } from '#core/sourceText.ts';
import { assignmentsIn } from './credentials/assignmentsIn.ts';
import { isCredential } from './credentials/judgeCredential.ts';
import { type FoundSecret, shapesIn } from './credentials/shapesIn.ts';

/** What stands in quotes in place of a credential. */
export const mask = '••••';

/** What takes the place of a credential in a published copy. */
export const withheld = 'WITHHELD';

/**
 * Credentials in a text that is read without a grammar: environment and settings files, code of other languages,
 * and code blocks of Markdown. Elsewhere only what is known by its shape alone. Placeholders are none. No place quotes the credential.
 */
export function findSecretsInText(source: SourceText): Secret[] {
  const { text, file } = source;
  return secretsAt(source, [...assignments(text, file), ...callsIn(text), ...shapesIn(text)]);
}

/**
 * Further places where a known credential stands again in any of the texts, whatever it is called there. Names of
 * networks count in quotes only, since they may be ordinary words. `secrets` are those of these very texts.
 */
export function findRepeatedSecrets(texts: readonly SourceText[], secrets: readonly Secret[]): Secret[] {
  const known = new Map<string, Secret['kind']>();
  for (const { file, text } of texts) {
    for (const { kind, place } of secrets) {
      if (place.file !== file) continue;
      const content = text.slice(...place.span);
      if (content.length >= shortestRepeated && !known.has(content)) known.set(content, kind);
    }
  }
  if (known.size === 0) return [];
  const words = [...known.keys()].sort((a, b) => b.length - a.length).map((word) => literally(word));
  const pattern = new RegExp(`(?<![A-Za-z\\d])(?:${words.join('|')})(?![A-Za-z\\d])`, 'g');
  return texts.flatMap((source) => {
    const taken = secrets.filter(({ place }) => place.file === source.file).map(({ place }) => place.span);
    return [...source.text.matchAll(pattern)].flatMap((match) => {
      const span: Span = [match.index, match.index + match[0].length];
      const kind = known.get(match[0]);
      const isKnown = taken.some(([start, end]) => start < span[1] && end > span[0]);
      if (kind === undefined || isKnown || (kind === 'wifi-name' && !isQuoted(source.text, span))) return [];
      return [{ kind, name: null, place: { ...placeOf(source, span), quote: mask } }];
    });
  });
}

/** Shorter ones turn up by chance. */
const shortestRepeated = 6;

function isQuoted(text: string, [start, end]: Span): boolean {
  return /["'`]/.test(text[start - 1] ?? '') && /["'`]/.test(text[end] ?? '');
}

function literally(text: string): string {
  return text.replace(/[\\^$.*+?()[\]{}|]/g, '\\$&');
}

/** The text with every credential's content replaced by the word WITHHELD. Secrets of other files are passed over. */
export function withholdSecrets(source: SourceText, secrets: readonly Secret[]): string {
  const spans = disjoint(secrets.filter(({ place }) => place.file === source.file).map(({ place }) => place.span));
  let copy = '';
  let from = 0;
  for (const [start, end] of spans) {
    copy += source.text.slice(from, start) + withheld;
    from = end;
  }
  return copy + source.text.slice(from);
}

/** Found credentials as records in order, those that overlap joined into one. Their quotes are masked. */
export function secretsAt(source: SourceText, found: readonly FoundSecret[]): Secret[] {
  const joined: FoundSecret[] = [];
  // Of two for the same words the earlier in the list knows more.
  for (const secret of found.toSorted((a, b) => a.span[0] - b.span[0])) {
    const last = joined.at(-1);
    if (!last || secret.span[0] >= last.span[1]) joined.push(secret);
    else
      joined[joined.length - 1] = {
        ...last,
        name: last.name ?? secret.name,
        span: [last.span[0], Math.max(last.span[1], secret.span[1])],
      };
  }
  return joined.map(({ kind, name, span }) => ({ kind, name, place: { ...placeOf(source, span), quote: mask } }));
}

/** A place whose quote shows a mask instead of each secret in it. */
export function maskedPlace(source: SourceText, span: Span, secrets: readonly Span[]): TextPlace {
  const place = placeOf(source, span);
  const inside = disjoint(secrets).filter(([start, end]) => start < span[1] && end > span[0]);
  if (inside.length === 0) return place;
  let quote = '';
  let from = span[0];
  for (const [start, end] of inside) {
    quote += source.text.slice(from, Math.max(start, from)) + mask;
    from = Math.min(end, span[1]);
  }
  return { ...place, quote: quote + source.text.slice(from, span[1]) };
}

function disjoint(spans: readonly Span[]): Span[] {
  const joined: Span[] = [];
  for (const span of spans.toSorted((a, b) => a[0] - b[0])) {
    const last = joined.at(-1);
    if (last && span[0] < last[1]) joined[joined.length - 1] = [last[0], Math.max(last[1], span[1])];
    else joined.push(span);
  }
  return joined;
}

/** Code that no grammar here reads, or that plays no role: values stand in quotes there. */
const codeFiles = /\.(ino|pde|c|cc|cpp|cxx|hh|hxx|py|js|mjs|ts|sh|html?|lua|rs|go)$/i;
const settingsFiles = /(^|\/)\.env[^/]*$|\.(env|ini|cfg|conf|toml|ya?ml|json|jsonc|properties|h|hpp|txt)$/i;

function assignments(text: string, file: string): FoundSecret[] {
  if (/\.(md|markdown)$/i.test(file)) {
    return [...text.matchAll(fences), ...text.matchAll(codeSpans)].flatMap((match) => {
      const [start, end] = match.indices?.groups?.body ?? [0, 0];
      return assignmentsIn(text.slice(start, end), start);
    });
  }
  if (codeFiles.test(file)) return assignmentsIn(text, 0, false);
  return settingsFiles.test(file) ? assignmentsIn(text) : [];
}

/** `WiFi.begin("name", "password")` and its like, wherever it is quoted: prose and comments included. */
function callsIn(text: string): FoundSecret[] {
  return [...text.matchAll(joinCalls)].flatMap((match) => {
    const { name = '', password = '' } = match.groups ?? {};
    const found = (kind: FoundSecret['kind'], group: string, content: string): FoundSecret[] => {
      const span = match.indices?.groups?.[group];
      return span !== undefined && isCredential(content, kind) ? [{ kind, name: null, span }] : [];
    };
    return [...found('wifi-name', 'name', name), ...found('wifi-password', 'password', password)];
  });
}

const joinCalls =
  /\b(?:WiFi\w*|wlan|wifi|sta(?:_if)?)\s*\.\s*(?:begin|addAP|softAP|connect)\s*\(\s*(["'])(?<name>[^"'\r\n]{1,64})\1\s*,\s*(["'])(?<password>[^"'\r\n]{1,64})\3/dg;

/** Code spans in running text, on one line. */
const codeSpans = /(?<!`)`(?!`)(?<body>[^`\r\n]+)`(?!`)/dg;

/** Fenced code blocks, CommonMark 0.31.2 section 4.5; an unclosed one runs to the end. */
const fences =
  /^ {0,3}(?<fence>`{3,}|~{3,})[^\r\n]*\r?\n(?<body>[\s\S]*?)(?:^ {0,3}\k<fence>[`~]*[ \t]*$|(?![\s\S]))/dgm;
