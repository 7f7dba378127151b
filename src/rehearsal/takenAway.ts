import type { Stop } from '#core/ledger.ts';
import type { Join, StepId } from '#core/step.ts';
import { tokensOf } from '#notation/names.ts';
import type { Bench, Removal } from './bench.ts';
import { isSameJoin } from './join.ts';
import { netsOf } from './nets.ts';
import { wordsAfter } from './wordsAfter.ts';

const forAWhile = /\b(?:temporar\w*|tests?|testing|jumpers?|programming|calibrat\w*|set-?up|debug\w*|optional)\b/i;

/** Wires and parts of the finished thing that a step took away and no later step brought back. */
export function findTakenAway(bench: Bench): Stop[] {
  return [...wiresGone(bench), ...partsGone(bench)];
}

function wiresGone({ build, made, unmade, script }: Bench): Stop[] {
  const nets = netsOf(made.map(({ join }) => join));
  return unmade.flatMap(({ what, step, claim }: Removal<Join>): Stop[] => {
    const row = build.connections.find(({ id }) => id === what.connection);
    const isBack = made.some(({ join }) => isSameJoin(join, what)) || nets.joined(what.from, what.to);
    if (row === undefined || isBack || isOptional(script, step)) return [];
    if (forAWhile.test(`${row.note ?? ''} ${row.net ?? ''}`)) return [];
    return [{ kind: 'connection-taken-away', step, claim, connection: row.id }];
  });
}

/** Only parts of the wiring: tape, jigs and jumpers are meant to go. Words that name the part later may put it back. */
function partsGone(bench: Bench): Stop[] {
  return [...bench.lifted.values()].flatMap(({ what, step, claim }): Stop[] => {
    const part = bench.partOfUse(what);
    const { ref } = what;
    const isWired = bench.build.connections.some(({ from, to }) => from.ref === ref || to.ref === ref);
    if (part === null || ref === null || !isWired || isOptional(bench.script, step)) return [];
    if (forAWhile.test(`${part.description} ${part.note ?? ''}`)) return [];
    const words = wordsAfter(bench.build, step, 'included');
    const said = new Set(tokensOf(words));
    const isNamed = [ref, ...tokensOf(part.description).slice(-1)].some((word) => said.has(word.toLowerCase()));
    const isPutBack = /\b(?:back|again|re-?(?:fit|seat|insert|place|install)\w*)\b/i.test(words) || isNamed;
    return isPutBack ? [] : [{ kind: 'part-taken-away', step, claim, part: part.id, ref }];
  });
}

function isOptional(script: Bench['script'], step: StepId): boolean {
  return script.find(({ id }) => id === step)?.optional === true;
}
