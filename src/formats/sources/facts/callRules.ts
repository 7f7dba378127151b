import type { PinUse } from '#core/code.ts';
import { type Linked, namedScope } from '../linking/link.ts';
import { lookUp } from '../linking/lookUp.ts';
import { meaningsOf } from '../linking/meaningsOf.ts';
import type { Call, Item, Value } from '../lowering/program.ts';
import cppCalls from '../tables/cppCalls.json';
import pythonCalls from '../tables/pythonCalls.json';

/** What the table tells of one function, method or class. See the table itself for the meaning of the fields. */
export interface CallRule {
  readonly call?: string;
  readonly make?: string;
  readonly of?: readonly string[];
  readonly some?: readonly number[];
  readonly template?: readonly number[];
  readonly pins: Readonly<Record<string, string>>;
  readonly mode?: string;
  readonly wraps?: boolean;
  /** Bare numbers up to this one number interrupts, not pins. */
  readonly numbered?: number;
  readonly count?: string;
  readonly countName?: string;
  readonly baud?: string;
  readonly baudName?: string;
  readonly address?: string;
  readonly group?: string;
}

interface RuleTable {
  readonly rules: readonly CallRule[];
  readonly modes: Readonly<Record<string, string>>;
}

const tables: Readonly<Record<'cpp' | 'python', RuleTable>> = { cpp: cppCalls, python: pythonCalls };
const byName = { cpp: indexOf(tables.cpp), python: indexOf(tables.python) };
const patterned = tables.cpp.rules.flatMap((rule) =>
  rule.make?.includes('*') ? [{ rule, pattern: new RegExp(`^${rule.make.replaceAll('*', '\\w+')}$`) }] : [],
);

const knownRules = new WeakMap<Linked, Map<Call, CallRule[]>>();

/** The rules that fit a call. Functions and classes that the build itself defines are not those of the table. */
export function rulesFor(call: Call, linked: Linked): CallRule[] {
  const known = knownRules.get(linked) ?? new Map<Call, CallRule[]>();
  knownRules.set(linked, known);
  const rules = known.get(call) ?? findRules(call, linked);
  known.set(call, rules);
  return rules;
}

function findRules(call: Call, linked: Linked): CallRule[] {
  const name = call.callee.at(-1);
  const language = linked.programAt(call.scope.source.file)?.language;
  if (name === undefined || language === undefined || isOwn(call, linked)) return [];
  const candidates =
    language === 'cpp' ? [...(byName.cpp.get(name) ?? []), ...patternedRules(name)] : (byName.python.get(name) ?? []);
  return candidates.filter((rule) => fits(rule, call, language, linked));
}

/** The argument that a rule's key names: a number from 0, a keyword, or `<1>` for a template argument. */
export function argumentAt(call: Call, key: string): Item | null {
  const template = /^<(\d)>$/.exec(key)?.[1];
  if (template !== undefined) {
    const value = call.template[Number(template)];
    return value ? { name: null, value } : null;
  }
  if (!/^\d+$/.test(key)) return call.args.find(({ name }) => name === key) ?? null;
  return call.args.filter(({ name }) => name === null)[Number(key)] ?? null;
}

/** The use that a rule gives to the pin under a key. */
export function useOf(rule: CallRule, use: string, call: Call, linked: Linked): PinUse {
  const position = /^mode:(\d)$/.exec(use)?.[1];
  if (position === undefined) return isUse(use) ? use : 'other';
  const mode = (rule.mode === undefined ? null : argumentAt(call, rule.mode)) ?? argumentAt(call, position);
  const language = linked.programAt(call.scope.source.file)?.language ?? 'cpp';
  const written = mode ? modeName(mode.value, call, linked) : '';
  const named = tables[language].modes[written];
  return named !== undefined && isUse(named) ? named : 'other';
}

/** The name of a call with aliases of imports followed: `machine.Pin`, or the class of the object and its method. */
export function fullName(call: Call, linked: Linked): string {
  const value: Value = { kind: 'name', path: call.callee, written: call.callee.join('.'), span: call.span };
  const [meaning] = meaningsOf(value, call.scope, linked);
  return meaning?.value.kind === 'name' ? meaning.value.path.join('.') : call.callee.join('.');
}

/** Names of what a method is called on: the object itself, and its class where the code tells. */
export function receiverNames(call: Call, linked: Linked): string[] {
  const path = call.callee.slice(0, -1);
  const name = path.at(-1);
  if (name === undefined) return [];
  const definitions = path.length === 1 ? lookUp(name, call.scope, linked) : fieldsOf(path, call, linked);
  const types = definitions.flatMap(({ type }) => (type === null ? [] : [type]));
  const value: Value = { kind: 'name', path, written: path.join('.'), span: call.span };
  const made = meaningsOf(value, call.scope, linked).flatMap((meaning) => {
    if (meaning.value.kind === 'call') return [fullName(meaning.value.call, linked)];
    return meaning.value.kind === 'name' && meaning.known ? [meaning.value.path.join('.')] : [];
  });
  return definitions.length > 0 ? [...types, ...made] : [name, ...made];
}

function fieldsOf(path: readonly string[], call: Call, linked: Linked) {
  const name = path.at(-1) ?? '';
  if (path[0] !== 'this' || path.length !== 2) return [];
  return lookUp(name, call.scope, linked);
}

function fits(rule: CallRule, call: Call, language: 'cpp' | 'python', linked: Linked): boolean {
  const [least = 0, most = Number.POSITIVE_INFINITY] = rule.some ?? [];
  if (call.args.length < least || call.args.length > most) return false;
  const [fewest = 0, highest = Number.POSITIVE_INFINITY] = rule.template ?? [];
  if (call.template.length < fewest || (rule.template && call.template.length > highest)) return false;
  if (rule.of) return receiverNames(call, linked).some((name) => rule.of?.includes(name));
  if (language === 'cpp') {
    // `Strip s = Strip(8, 5)` makes an object by what looks like a call.
    return rule.make !== undefined ? call.how === 'make' || call.callee.length === 1 : call.callee.length === 1;
  }
  const name = fullName(call, linked);
  if (name === rule.call) return true;
  const open = linked.programAt(call.scope.source.file)?.openModules ?? [];
  return call.callee.length === 1 && open.some((module) => `${module}.${name}` === rule.call);
}

/** Whether the build itself defines what is called. */
function isOwn(call: Call, linked: Linked): boolean {
  const [name] = call.callee;
  if (name === undefined || call.callee.length > 1) return false;
  for (let scope: Call['scope'] | null = call.scope; scope; scope = scope.parent)
    if (scope.routines.has(name)) return true;
  if (linked.visibleFrom(call.scope.source.file).some(({ file }) => file.routines.has(name))) return true;
  const type = namedScope(name, call.scope, linked);
  return type !== null && type.kind === 'class';
}

function modeName(value: Value, call: Call, linked: Linked): string {
  const [meaning] = meaningsOf(value, call.scope, linked);
  const found = meaning?.value ?? value;
  if (found.kind === 'name') return found.path.at(-1) ?? '';
  return found.kind === 'number' ? found.text : '';
}

const uses: ReadonlySet<string> = new Set<PinUse>([
  'output',
  'input',
  'analogue-in',
  'pwm',
  'interrupt',
  'led-strip',
  'i2c-sda',
  'i2c-scl',
  'spi',
  'uart',
  'servo',
  'encoder',
  'other',
  'named',
]);

function isUse(text: string): text is PinUse {
  return uses.has(text);
}

function patternedRules(name: string): CallRule[] {
  return patterned.filter(({ pattern }) => pattern.test(name)).map(({ rule }) => rule);
}

function indexOf({ rules }: RuleTable): Map<string, CallRule[]> {
  const index = new Map<string, CallRule[]>();
  for (const rule of rules) {
    const name = (rule.call ?? rule.make ?? '').split('.').at(-1) ?? '';
    index.set(name, [...(index.get(name) ?? []), rule]);
  }
  return index;
}
