import bash from 'refractor/bash';
import { refractor } from 'refractor/core';
import cpp from 'refractor/cpp';
import ini from 'refractor/ini';
import javascript from 'refractor/javascript';
import json from 'refractor/json';
import python from 'refractor/python';
import yaml from 'refractor/yaml';
import { type Child, element } from '../shared/html.ts';

for (const grammar of [bash, cpp, ini, javascript, json, python, yaml]) refractor.register(grammar);
refractor.alias({ cpp: ['c++', 'arduino', 'ino', 'h', 'hpp', 'cc'], ini: ['conf', 'cfg', 'toml'] });

/** Longer texts are shown plain: nobody looks for a colour in so long a listing. */
const longest = 60_000;

/** What is set apart in a listing, by the names that the library gives: few, so that print can show them as well. */
const marks: Readonly<Record<string, string>> = {
  comment: 'q',
  string: 's',
  number: 's',
  keyword: 'k',
  boolean: 'k',
  builtin: 'k',
  section: 'k',
};

/** A listing with comments, keywords and literals set apart; as plain text where its language is not known. */
export function highlight(text: string, language: string | null, path = ''): Child[] {
  const name = languageOf(language, path);
  if (name === null || text.length > longest) return [text];
  return refractor.highlight(text, name).children.flatMap((node) => childrenOf(node));
}

function languageOf(language: string | null, path: string): string | null {
  const extension = /\.([a-z0-9+]+)$/i.exec(path)?.[1]?.toLowerCase();
  for (const name of [language?.toLowerCase(), extension]) {
    if (name !== undefined && refractor.registered(name)) return name;
  }
  return null;
}

type Node = ReturnType<typeof refractor.highlight>['children'][number];

function childrenOf(node: Node): Child[] {
  if (node.type === 'text') return [node.value];
  if (node.type !== 'element') return [];
  const names = [node.properties.className].flat().map(String);
  const mark = names.flatMap((name) => marks[name] ?? [])[0];
  const children = node.children.flatMap((child) => childrenOf(child));
  return mark === undefined ? children : [element('span', { class: mark }, ...children)];
}
