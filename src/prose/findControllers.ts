import type { Build } from '#core/build.ts';
import { type Claim, declared } from '#core/claim.ts';
import type { CodePin } from '#core/code.ts';
import type { Controller } from '#core/facts.ts';
import type { Part, Ref } from '#core/part.ts';
import type { Path, Place } from '#core/place.ts';
import type { StepFacts } from '#core/step.ts';
import { comparePins } from '#notation/pins.ts';
import { refClass } from '#notation/refs.ts';
import words from './microcontrollers.json';

const sure = new RegExp(`\\b(?:${words.sure.join('|')})`, 'i');
const likely = new RegExp(`\\b(?:${words.likely.join('|')})\\b`, 'i');

/**
 * Which board runs which code: as the steps declare it, else the one part that is described as such a board, else
 * the part whose wired pins the code names most. None where that is not certain.
 */
export function findControllers(build: Build, steps: readonly StepFacts[]): Claim<Controller>[] {
  const told = declaredControllers(build, steps);
  if (told.length > 0) return told;
  const files = build.sources.map(({ file }) => file);
  const described = describedBoards(build.parts);
  const only = described.length === 1 ? described[0] : undefined;
  const ref = only?.refs[0];
  if (only !== undefined && ref !== undefined) return [derived(only, ref, files, [only.place], 0.8)];
  const named = mostNamed(build, described, files);
  return named.length > 0 ? named : wiredByName(build, files);
}

const boardName =
  /^(?:THE_?)?(?:BOARD|MCU|CONTROLLER|ARDUINO|ESP|ESP32|ESP8266|NODEMCU|PICO|NANO|UNO|MEGA|LEONARDO|MICRO|TEENSY)\d?$/u;

/**
 * In a list without references, the wiring may call the board by a word. It is the one such word of which the code
 * names two pins or more, where the list describes one board and no more.
 */
function wiredByName(build: Build, files: readonly Path[]): Claim<Controller>[] {
  const pins = build.sources.flatMap((source) => source.pins);
  const refs = new Set(build.connections.flatMap(({ from, to }) => [from.ref, to.ref]));
  const named = [...refs].filter((ref) => boardName.test(ref.toUpperCase()));
  const [ref] = named;
  const board = boardWithoutRef(build.parts);
  if (ref === undefined || board === undefined || named.length > 1) return [];
  const wired = wiredPins(build, ref, pins);
  return wired.length < 2 ? [] : [derived(board, ref, files, wired, 0.6)];
}

/** The one board that a list describes and gives no reference. */
function boardWithoutRef(parts: readonly Part[]): Part | undefined {
  const boards = parts.filter(
    ({ refs, description, fitted }) =>
      fitted && refs.length === 0 && (sure.test(description) || likely.test(description)),
  );
  return boards.length === 1 ? boards[0] : undefined;
}

function derived(part: Part, ref: Ref, files: readonly Path[], places: readonly Place[], confidence: number) {
  return { value: { part: part.id, ref, files }, basis: 'derived' as const, places, confidence };
}

/** One controller for each reference that code is loaded on to, with the files beside the code that it is told to run. */
function declaredControllers(build: Build, steps: readonly StepFacts[]): Claim<Controller>[] {
  const loads = steps.flatMap((step) => step.loads).filter(({ value }) => value.onto !== null);
  const refs = [...new Set(loads.flatMap(({ value }) => value.onto ?? []))];
  return refs.map((ref) => {
    const own = loads.filter(({ value }) => value.onto === ref);
    const others = loads.filter(({ value }) => value.onto !== ref).map(({ value }) => value.path);
    const files = build.sources
      .map(({ file }) => file)
      .filter((file) => own.some(({ value }) => belongs(file, value.path)) && !others.includes(file));
    const part =
      build.parts.find((one) => one.refs.includes(ref)) ??
      (boardName.test(ref.toUpperCase()) ? boardWithoutRef(build.parts) : undefined);
    return declared({ part: part?.id ?? ref, ref, files }, ...own.flatMap(({ places }) => places));
  });
}

/** A program is the file or folder named, and what lies beside and below the file. */
function belongs(file: Path, program: Path): boolean {
  if (file === program || file.startsWith(`${program}/`)) return true;
  const isFile = /\.[A-Za-z0-9]+$/.test(program);
  const folder = program.split('/').slice(0, -1).join('/');
  return isFile && (folder === '' ? !file.includes('/') : file.startsWith(`${folder}/`));
}

/** Modules and chips that are described as controllers: the sure ones, else the likely ones. */
function describedBoards(parts: readonly Part[]): Part[] {
  const may = parts.filter((part) => part.fitted && part.refs.some(mayBeBoard));
  const surely = may.filter((part) => sure.test(`${part.description} ${part.mpn ?? ''}`));
  return surely.length > 0
    ? surely
    : may.filter((part) => likely.test(part.description) && !/\bperf ?board/i.test(part.description));
}

function mayBeBoard(ref: Ref): boolean {
  const kind = refClass(ref);
  return kind === 'ic' || kind === null;
}

/** The part that has the most wired pins of a name that the code uses: at least two, and more than any other. */
function mostNamed(build: Build, described: readonly Part[], files: readonly Path[]): Claim<Controller>[] {
  const pins = build.sources.flatMap((source) => source.pins);
  const among = described.length > 0 ? described : build.parts;
  const counted = among
    .flatMap((part) => part.refs.filter(mayBeBoard).map((ref) => ({ part, ref, wired: wiredPins(build, ref, pins) })))
    .sort((a, b) => b.wired.length - a.wired.length);
  const [first, second] = counted;
  if (first === undefined || first.wired.length < 2 || first.wired.length === second?.wired.length) return [];
  return [derived(first.part, first.ref, files, first.wired, 0.6)];
}

/** Where the wiring has pins of a part that code names, one place a pin. */
function wiredPins(build: Build, ref: Ref, pins: readonly CodePin[]): Place[] {
  const found = new Map<string, Place>();
  for (const { from, to, place } of build.connections) {
    for (const end of [from, to]) {
      const isNamed = end.ref === ref && pins.some(({ pin }) => comparePins(pin, end.pin) === 'same');
      if (isNamed && !found.has(end.pin)) found.set(end.pin, place);
    }
  }
  return [...found.values()];
}
