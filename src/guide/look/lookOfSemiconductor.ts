import type { LookSign, PartForm, PartLook } from '../guide.ts';
import { chipSizeOf, type Described, pinsOf, says } from './described.ts';
import { formed, sure, typePrint, unseen, usual } from './signs.ts';

/** A body that has three or four legs, and how its pins are counted: JEDEC outlines of that name, from memory. */
const bodies: readonly { readonly words: string; readonly form: PartForm; readonly counted: string }[] = [
  {
    words: 'to-?92',
    form: 'to-92',
    counted: 'Flat side towards you and legs down, pins 1, 2 and 3 stand from left to right.',
  },
  {
    words: 'to-?220',
    form: 'to-220',
    counted: 'Print towards you and legs down, pins 1, 2 and 3 stand from left to right.',
  },
  {
    words: 'sot-?223',
    form: 'sot-223',
    counted: 'Print towards you and the broad tab up, pins 1, 2 and 3 stand below from left to right.',
  },
  {
    words: 'sot-?23(?:-3)?(?!-?\\d)|to-?236',
    form: 'sot-23',
    counted: 'Seen from above with the lone leg up, pin 1 is lower left, pin 2 lower right, pin 3 the lone one.',
  },
];

const dataSheet = sure('Which pin does what differs from type to type: the data sheet of exactly this type says it.');

/** Bodies with three legs, whatever is in them. */
function threeLegged(part: Described): PartLook | null {
  const body = bodies.find(({ words }) => says(part, words));
  return body === undefined ? null : formed(body.form, [...typePrint(part.type), sure(body.counted), dataSheet]);
}

export function lookOfTransistor(part: Described): PartLook | null {
  return threeLegged(part) ?? many(part) ?? printedOnly(part);
}

/** The band of a diode marks its cathode: JEDEC outlines DO-35 and DO-41, from memory. */
export function lookOfDiode(part: Described): PartLook | null {
  if (says(part, 'bridge')) {
    return unseen(...typePrint(part.type), sure('Its legs are marked ~ (two of them), + and −.'));
  }
  const legs = threeLegged(part);
  if (legs !== null) return legs;
  if (says(part, 'bidirectional')) return unseen(...typePrint(part.type));
  if (says(part, 'photo ?diode|laser')) return unseen(...typePrint(part.type));
  const band = sure('The band at one end marks the cathode (K), where current leaves.');
  if (chipSizeOf(part) !== null || says(part, 'sod-?\\d*|sm[abc]|melf|mini-?melf|smd|smt|do-?21[456]\\w*')) {
    return formed('barred-chip', [...typePrint(part.type), sure('A bar across one end marks the cathode (K).')]);
  }
  // A type of the 1N numbers has leads, unless letters after it say that it is the small version of that type.
  const isLeaded =
    says(part, 'do-?(?:7|15|35|41|201\\w*)|axial|through[- ]hole|tht') || /\b1N\d{3,4}[A-V]?\b/u.test(part.text);
  const signs = [...typePrint(part.type), band];
  return isLeaded ? formed('diode', signs) : unseen(...signs);
}

const colours =
  'red|green|blue|white|yellow|amber|orange|pink|violet|purple|ultraviolet|infrared|uv|ir|warm white|cool white';

export function lookOfLed(part: Described): PartLook | null {
  if (chipSizeOf(part) !== null || says(part, 'smd|smt|plcc')) {
    return formed('chip', [
      usual('A mark on one end or corner shows the cathode (K); makers differ, so try it first.'),
    ]);
  }
  if (says(part, 'addressable|ws28\\d\\d\\w*|sk68\\d\\d|strip|matrix|bar|segment|display|module|panel')) return null;
  if (says(part, 'sewable|sew-on|star|cob|filament')) return null;
  if (says(part, 'rgb|bicolou?r|two[- ]colou?r|dual colou?r')) {
    return formed('led-four', [usual('The longest of its legs is the one that its colours share.')]);
  }
  const dark: LookSign[] = says(part, colours)
    ? [sure('Clear ones of any colour look alike while they are dark: keep it apart from others.')]
    : [];
  if (!says(part, '(?:3|5|8|10) ?mm|t-?1|round|radial|through[- ]hole|tht')) {
    return unseen(usual('On one with leads, the longer is the anode, plus, as long as none is cut.'), ...dark);
  }
  return formed('led', [
    usual('The longer lead is the anode, plus, as long as none is cut.'),
    usual('The rim is flat on the side of the cathode, minus.'),
    ...dark,
  ]);
}

export function lookOfChip(part: Described): PartLook | null {
  return threeLegged(part) ?? many(part) ?? printedOnly(part);
}

/** Bodies with pins along two sides or four. */
function many(part: Described): PartLook | null {
  const pins = pinsOf(part);
  const counted = 'the pins count from there down the left side and up the right';
  if (says(part, '[cp]?dip-?\\d*|\\d+-?dip') && isEven(pins)) {
    const signs = [
      ...typePrint(part.type),
      sure(`With the notch up, pin 1 is upper left, often beside a dot; ${counted}.`),
    ];
    return { drawing: { kind: 'dual', pins, feet: 'pins' }, signs };
  }
  if (says(part, '(?:\\d+-?)?(?:s[od]i[cl]|[mtqsv]{0,3}s?op|so)-?\\d*') && isEven(pins)) {
    const signs = [
      ...typePrint(part.type),
      sure(`With the dot or the notched end up, pin 1 is upper left; ${counted}.`),
    ];
    return { drawing: { kind: 'dual', pins, feet: 'leads' }, signs };
  }
  if (says(part, '[a-z]{0,3}qf[np]-?\\d*|plcc-?\\d*') && pins !== null && pins % 4 === 0 && pins <= 256) {
    const words = 'A dot or a cut corner marks pin 1; seen from above, the pins count on against the clock.';
    return { drawing: { kind: 'quad', pins }, signs: [...typePrint(part.type), sure(words)] };
  }
  return null;
}

function isEven(pins: number | null): pins is number {
  return pins !== null && pins % 2 === 0 && pins >= 4 && pins <= 64;
}

function printedOnly(part: Described): PartLook | null {
  return part.type === null ? null : unseen(...typePrint(part.type));
}
