import type { SourceLanguage } from '#core/code.ts';
import type { SourceText } from '#core/sourceText.ts';
import type { SyntaxNode } from '#core/syntax.ts';
import { type Call, fileScope, type ImportLine, type Program, type Scope, type Unread } from './program.ts';

/** A program while it is being lowered. */
export interface Draft {
  readonly source: SourceText;
  readonly file: Scope;
  /** By node, so that no call is made twice. */
  readonly calls: Map<SyntaxNode, Call>;
  readonly imports: ImportLine[];
  readonly openModules: string[];
  readonly unread: Unread[];
  firstRoutine: number;
}

/** A node still to be looked at, and the scope that it stands in. */
export interface Frame {
  readonly node: SyntaxNode;
  readonly scope: Scope;
  /** False inside a block that a condition may switch off. */
  readonly certain: boolean;
}

export function startDraft(source: SourceText): Draft {
  return {
    source,
    file: fileScope(source),
    calls: new Map(),
    imports: [],
    openModules: [],
    unread: [],
    firstRoutine: source.text.length,
  };
}

export function finishDraft(draft: Draft, language: SourceLanguage): Program {
  const { source, file, imports, openModules, unread, firstRoutine } = draft;
  return { source, language, file, calls: [...draft.calls.values()], imports, openModules, unread, firstRoutine };
}

/** Runs through a tree in source order with a stack of its own: sources can nest deeper than the engine's. */
export function walk(first: Frame, visit: (frame: Frame) => readonly Frame[]): void {
  const open = [first];
  for (let frame = open.pop(); frame; frame = open.pop()) {
    open.push(...visit(frame).toReversed());
  }
}

/** Frames for nodes that stand in the same scope as the frame's own. */
export function inside(frame: Frame, nodes: readonly SyntaxNode[] = frame.node.children): Frame[] {
  return nodes.map((node) => ({ ...frame, node }));
}
