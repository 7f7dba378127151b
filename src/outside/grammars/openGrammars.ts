import { createRequire } from 'node:module';
import { Language, Parser } from 'web-tree-sitter';
import type { GrammarPort } from '#app/ports.ts';
import type { SourceLanguage } from '#core/code.ts';
import { Failure } from '#core/failure.ts';
import attributeMacros from './attributeMacros.json';
import { plainTree } from './plainTree.ts';

const grammarFiles: Record<SourceLanguage, string> = {
  cpp: '@vscode/tree-sitter-wasm/wasm/tree-sitter-cpp.wasm',
  python: '@vscode/tree-sitter-wasm/wasm/tree-sitter-python.wasm',
};

/**
 * Grammars of C++ (C and sketches included) and Python. Nothing is loaded before the first parse; each grammar
 * is loaded once. The trees handed out are plain: the parser's own memory is freed before `parse` returns.
 */
export function openGrammars(): GrammarPort {
  const loading = new Map<SourceLanguage, Promise<Language>>();
  return {
    async parse(language, text) {
      let grammar = loading.get(language);
      if (!grammar) {
        grammar = loadGrammar(language);
        loading.set(language, grammar);
        grammar.catch(() => loading.delete(language));
      }
      return parseWith(await grammar, language, text);
    },
  };
}

let started: Promise<void> | null = null;

async function loadGrammar(language: SourceLanguage): Promise<Language> {
  try {
    // Resolved as the packages are installed, so that the files are found from the sources and from a bundle alike.
    const { resolve } = createRequire(import.meta.url);
    started ??= Parser.init({ locateFile: () => resolve('web-tree-sitter/web-tree-sitter.wasm') });
    await started;
    return await Language.load(resolve(grammarFiles[language]));
  } catch (cause) {
    started = null;
    throw new Failure(
      'read-failed',
      `The grammar for ${language} sources could not be loaded from ${grammarFiles[language]}.`,
      'Install the program again; its folder node_modules is incomplete.',
      { cause },
    );
  }
}

function parseWith(grammar: Language, language: SourceLanguage, text: string) {
  const parser = new Parser();
  try {
    parser.setLanguage(grammar);
    const tree = parser.parse(language === 'cpp' ? withoutAttributes(text) : text);
    if (!tree) {
      throw new Failure('read-failed', `The ${language} parser gave no tree.`, 'Try again; report it if it stays.');
    }
    try {
      return plainTree(tree, text);
    } finally {
      tree.delete();
    }
  } finally {
    parser.delete();
  }
}

const attributes = new RegExp(`\\b(?:${attributeMacros.names.join('|')})\\b`, 'g');

/** Blanks in place of attribute macros, so that all offsets stay; the nodes' words come from the text itself. */
function withoutAttributes(text: string): string {
  return text.replace(attributes, (name) => ' '.repeat(name.length));
}
