import type { Path } from '#core/place.ts';
import type { Call, Definition } from '../lowering/program.ts';
import type { Linked } from './link.ts';
import { classAround, lookUp } from './lookUp.ts';

/** Whether a call can mean the routine of a parameter: its kind fits, and the files know each other. */
export function canReach(call: Call, definition: Definition, owner: string | null, linked: Linked): boolean {
  const isMethod = owner !== null && owner !== definition.of?.routine.name;
  if (isMethod ? !canBeMethodOf(owner, call, linked) : owner === null && !isPlainCall(call, linked)) return false;
  const [from, to] = [call.scope.source.file, definition.scope.source.file];
  if (linked.programAt(from)?.language === 'python') return true;
  const sees = (a: Path, b: Path) => linked.visibleFrom(a).some(({ source }) => source.file === b);
  return sees(from, to) || sees(to, from) || linked.visibleFrom(from).some(({ source }) => sees(to, source.file));
}

/** A method is called on an object of its class, or inside the class itself. */
function canBeMethodOf(owner: string, call: Call, linked: Linked): boolean {
  const receiver = call.callee.at(-2);
  if (receiver === undefined) return classAround(call.scope, linked)?.name === owner;
  const types = lookUp(receiver, call.scope, linked).flatMap(({ type, value }) => {
    const made = value?.kind === 'call' ? value.call.callee.at(-1) : undefined;
    return [...(type === null ? [] : [type]), ...(made === undefined ? [] : [made])];
  });
  return types.length === 0 || types.includes(owner);
}

/** A function is called by its name alone, or through the module that holds it. */
function isPlainCall(call: Call, linked: Linked): boolean {
  const [head] = call.callee;
  if (head === undefined || call.callee.length === 1) return true;
  return lookUp(head, call.scope, linked).some(({ how }) => how === 'module');
}
