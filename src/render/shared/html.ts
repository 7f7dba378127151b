import { assert } from '#core/failure.ts';
import { isSafeUrl } from './safeUrl.ts';

declare const made: unique symbol;

/** Markup that was made by `element`, and so is well formed and escaped. */
export type Html = { readonly markup: string; readonly [made]: true };

/** What an element holds: markup, text (escaped), or nothing. */
export type Child = Html | string | number | null | false | readonly Child[];

/** Null, false and undefined leave an attribute out; true writes it empty. */
export type Attributes = Readonly<Record<string, string | number | boolean | null | undefined>>;

const voidElements = new Set(['br', 'hr', 'img', 'input', 'link', 'meta']);
/** Shapes of SVG, which close themselves where they hold nothing. */
const shapes = new Set(['circle', 'ellipse', 'line', 'path', 'rect', 'use']);
const urlAttributes = new Set(['href', 'src']);

/**
 * One element of HTML or SVG. Text and attribute values are escaped; an address that is neither relative nor
 * http, https or mailto is left out. Names come from our own code and are asserted: no `on…`, no `style`.
 */
export function element(name: string, attributes: Attributes = {}, ...children: Child[]): Html {
  assert(/^[a-zA-Z][a-zA-Z0-9]*$/.test(name) && name !== 'script', `an element named ${name}`);
  const start = `<${name}${Object.entries(attributes).map(formatAttribute).join('')}`;
  if (voidElements.has(name)) {
    assert(children.length === 0, `a void element ${name} with content`);
    return trusted(`${start}/>`);
  }
  if (shapes.has(name) && children.length === 0) return trusted(`${start}/>`);
  return trusted(`${start}>${markupOf(children)}</${name}>`);
}

/** The style of a page that stands alone. Its text is our own, and not escaped: in it, marks of markup are plain text. */
export function styleElement(css: string): Html {
  assert(!css.includes('<'), 'a style with markup in it');
  return trusted(`<style>${css}</style>`);
}

/** Data for programs that read the page. It holds no mark that could end the element. */
export function dataElement(type: 'application/ld+json' | 'application/json', data: unknown): Html {
  const text = JSON.stringify(data).replace(
    /[<>&\u2028\u2029]/g,
    (mark) => `\\u${mark.charCodeAt(0).toString(16).padStart(4, '0')}`,
  );
  return trusted(`<script type="${type}">${text}</script>`);
}

/** A program that runs when the page is there. */
export function scriptElement(path: string): Html {
  assert(isSafeUrl(path), `a script at ${path}`);
  return trusted(`<script src="${escapeText(path)}" defer=""></script>`);
}

/** The text of a whole document, which readers of HTML and of XML alike can take in. */
export function formatDocument(root: Html): string {
  return `<!DOCTYPE html>\n${root.markup}\n`;
}

function trusted(markup: string): Html {
  return { markup } as Html;
}

function markupOf(child: Child): string {
  if (child === null || child === false) return '';
  if (typeof child === 'string' || typeof child === 'number') return escapeText(String(child));
  return 'markup' in child ? child.markup : child.map(markupOf).join('');
}

function formatAttribute([name, value]: [string, Attributes[string]]): string {
  assert(/^[a-zA-Z][a-zA-Z0-9-]*$/.test(name) && !/^(on|style$)/i.test(name), `an attribute named ${name}`);
  if (value === null || value === undefined || value === false) return '';
  if (value === true) return ` ${name}=""`;
  if (urlAttributes.has(name) && !isSafeUrl(String(value))) return '';
  return ` ${name}="${escapeText(String(value))}"`;
}

const escapes: Readonly<Record<string, string>> = {
  '&': '&amp;',
  '<': '&lt;',
  '>': '&gt;',
  '"': '&quot;',
  "'": '&#39;',
};

/** Control characters that HTML forbids even as references are dropped. */
function escapeText(text: string): string {
  return text.replace(/[&<>"']/g, (character) => escapes[character] ?? '').replace(/(?![\t\n\r])\p{Cc}/gu, '');
}
