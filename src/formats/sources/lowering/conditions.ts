import type { SyntaxNode } from '#core/syntax.ts';
import { operands } from './operands.ts';

/** Macros of which a file itself says whether they are defined, and as what number; null: not a number. */
export type KnownMacros = Map<string, { readonly defined: boolean; readonly number: number | null }>;

export interface Branch {
  readonly nodes: readonly SyntaxNode[];
  /** Whether the compiler sees it: null where the file alone does not tell. */
  readonly active: boolean | null;
  readonly start: number;
  readonly end: number;
}

/** The branches of `#if … #elif … #else`, each with what the file tells about its being compiled. */
export function branchesOf(node: SyntaxNode, macros: KnownMacros): Branch[] {
  const branches: Branch[] = [];
  let before: boolean | null = false;
  for (let part: SyntaxNode | null = node; part; part = part.field('alternative')) {
    const holds: boolean | null = conditionOf(part, macros);
    const alternative = part.field('alternative');
    const condition =
      part.field('condition') ??
      (part.type.startsWith('preproc_if') || part.type.startsWith('preproc_elifdef') ? part.field('name') : null);
    const nodes = part.children.filter((child) => child !== alternative && child !== condition);
    branches.push({
      nodes,
      active: both(negate(before), holds),
      start: part.start,
      end: alternative?.start ?? part.end,
    });
    before = either(before, holds);
  }
  return branches;
}

function conditionOf(part: SyntaxNode, macros: KnownMacros): boolean | null {
  if (part.type === 'preproc_else') return true;
  const name = part.field('name')?.text;
  if (name !== undefined && part.field('condition') === null) {
    const defined = macros.get(name)?.defined ?? null;
    return /^#\s*(ifn|elifn)/.test(part.text.slice(0, 40)) ? negate(defined) : defined;
  }
  const condition = part.field('condition');
  const number = condition ? numberOf(condition, macros, 0) : null;
  return number === null ? null : number !== 0;
}

const deepest = 40;

function numberOf(node: SyntaxNode, macros: KnownMacros, depth: number): number | null {
  if (depth > deepest) return null;
  switch (node.type) {
    case 'number_literal':
      return numberIn(node.text);
    case 'identifier': {
      if (node.text === 'true' || node.text === 'false') return Number(node.text === 'true');
      const known = macros.get(node.text);
      if (!known) return null;
      // The preprocessor takes an undefined name for 0.
      return known.defined ? known.number : 0;
    }
    case 'preproc_defined': {
      const defined = macros.get(operands(node)[0]?.text ?? '')?.defined;
      return defined === undefined ? null : Number(defined);
    }
    case 'parenthesized_expression': {
      const inner = operands(node)[0];
      return inner ? numberOf(inner, macros, depth + 1) : null;
    }
    case 'unary_expression': {
      const argument = node.field('argument');
      const number = argument ? numberOf(argument, macros, depth + 1) : null;
      return number !== null && node.field('operator')?.text === '!' ? Number(number === 0) : null;
    }
    case 'binary_expression':
      return binary(node, macros, depth);
    default:
      return null;
  }
}

function binary(node: SyntaxNode, macros: KnownMacros, depth: number): number | null {
  const [left, right] = [node.field('left'), node.field('right')];
  const a = left ? numberOf(left, macros, depth + 1) : null;
  const b = right ? numberOf(right, macros, depth + 1) : null;
  const operator = node.field('operator')?.text;
  if (operator === '&&' && (a === 0 || b === 0)) return 0;
  if (operator === '||' && ((a !== null && a !== 0) || (b !== null && b !== 0))) return 1;
  if (a === null || b === null) return null;
  switch (operator) {
    case '&&':
      return 1;
    case '||':
      return 0;
    case '==':
      return Number(a === b);
    case '!=':
      return Number(a !== b);
    case '<':
      return Number(a < b);
    case '>':
      return Number(a > b);
    case '<=':
      return Number(a <= b);
    case '>=':
      return Number(a >= b);
    default:
      return null;
  }
}

/** The value of an integer literal of C; null where it is none. */
export function numberIn(text: string): number | null {
  const digits = text.replace(/'/g, '').replace(/[uUlL]+$/, '');
  if (/^0[xX][\da-fA-F]+$/.test(digits) || /^0[bB][01]+$/.test(digits)) return Number(digits);
  if (/^0[0-7]+$/.test(digits)) return Number.parseInt(digits, 8);
  return /^\d+$/.test(digits) ? Number(digits) : null;
}

function negate(value: boolean | null): boolean | null {
  return value === null ? null : !value;
}

function both(a: boolean | null, b: boolean | null): boolean | null {
  if (a === false || b === false) return false;
  return a === null || b === null ? null : true;
}

function either(a: boolean | null, b: boolean | null): boolean | null {
  if (a === true || b === true) return true;
  return a === null || b === null ? null : false;
}
