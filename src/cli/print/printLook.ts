import type { Look, Looking } from '#app/look.ts';
import { count, inColumns, safe, wrapped } from './layout.ts';

/** Each picture in words, those that want another look first. */
export function printLook({ shots, leftOut }: Looking): string {
  if (shots.length === 0 && leftOut.length === 0) return 'There are no pictures here.\n';
  const told = shots.map((shot) => ({ shot, faults: faultsOf(shot) }));
  const faulty = told.filter(({ faults }) => faults.length > 0);
  const good = told.filter(({ faults }) => faults.length === 0);
  const parts = [
    `${count(shots.length, 'picture')} measured; ${good.length} with nothing to say against ${good.length === 1 ? 'it' : 'them'}.\n`,
    faulty.length === 0
      ? ''
      : `Look again at\n${inColumns(faulty.map(({ shot, faults }) => [safe(shot.path), faults.join(', ')]))}\n`,
    good.length === 0 ? '' : `Good\n${inColumns(good.map(({ shot }) => [safe(shot.path), aboutOf(shot)]))}\n`,
    ...leftOut.map(({ path, reason }) => wrapped(`Left out ${safe(path)}: ${safe(reason)}`, '')),
  ];
  return parts.filter((part) => part !== '').join('\n');
}

/** What may make it worth taking again, with the figure that says so. */
function faultsOf({ measures }: Look): string[] {
  const { focus, exposure, cast } = measures;
  const moved = focus.motion === null ? '' : ', moved';
  return [
    focus.verdict === 'soft' ? `soft${moved}` : '',
    focus.verdict === 'unsure' ? 'focus cannot be told' : '',
    exposure.verdict === 'good' ? '' : `${exposure.verdict} (${signed(exposure.ev)} stops)`,
    cast === null || cast.verdict === 'neutral' ? '' : `${cast.verdict} light (ΔE ${cast.deltaE.toFixed(0)})`,
  ].filter((fault) => fault !== '');
}

function aboutOf({ measures }: Look): string {
  return measures.board === null ? 'sharp' : 'sharp, a whole board in view';
}

function signed(stops: number): string {
  return `${stops < 0 ? '−' : '+'}${Math.abs(stops).toFixed(1)}`;
}
