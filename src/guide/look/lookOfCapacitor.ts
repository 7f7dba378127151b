import { capacitorCodeOf, capacitorToleranceLetter } from '#notation/codes.ts';
import { formatQuantity } from '#notation/value.ts';
import type { LookSign, PartLook } from '../guide.ts';
import { chipSizeOf, type Described, measureOf, ratingOf, says, toleranceOf } from './described.ts';
import { formed, sure, unseen, usual } from './signs.ts';

/**
 * Codes by EIA-198 and IEC 60062. That an aluminium can is printed in full and its polarity marked: IEC 60384-4 (from
 * memory); which lead is longer, what a stripe means and what carries no print: common practice.
 */
export function lookOfCapacitor(part: Described): PartLook | null {
  const farads = measureOf(part, 'capacitance');
  if (says(part, 'trimmer|variable')) return formed('trimmer');
  if (says(part, 'tantalum')) return tantalum(part, farads);
  if (says(part, 'electrolytic|alumini?um|elko|polari[sz]ed|super ?capacitor|supercap|bipolar|non[- ]?polar')) {
    return can(part, farads);
  }
  const isChip = chipSizeOf(part) !== null || says(part, 'smd|smt|mlcc');
  if (isChip) {
    return formed('chip', [
      usual('It carries no print, so keep it in its labelled strip until it is used.'),
      eitherWay,
    ]);
  }
  const code = farads === null ? null : capacitorCodeOf(farads);
  if (says(part, 'film|polyester|polypropylene|foil|mkt|mkp|mks|safety')) {
    return formed('box', [...codeSigns(part, farads, code), eitherWay], ...(code === null ? [] : [code]));
  }
  if (says(part, 'ceramic|disc|x7r|x5r|c0g|np0|y5v|z5u')) {
    return formed('disc', [...codeSigns(part, farads, code), eitherWay], ...(code === null ? [] : [code]));
  }
  // Up to a microfarad nearly all are ceramic or film, which carry the same code.
  return farads !== null && farads < 1e-6 && code !== null ? unseen(...codeSigns(part, farads, code)) : null;
}

const eitherWay = sure('Either way round is right.');

function codeSigns(part: Described, farads: number | null, code: string | null): LookSign[] {
  if (farads === null || code === null) return [];
  const tolerance = toleranceOf(part);
  const letter = tolerance === null ? null : capacitorToleranceLetter(tolerance);
  const following = letter === null ? '' : `, and ${letter} after it for its tolerance`;
  return [usual(`Often printed ${code}${explained(code)}${following}.`)];
}

/** How the three figures count: `104` is 10 with four noughts, in picofarads. */
function explained(code: string): string {
  if (code.includes('R')) return ` (${code.replace(/^R/u, '0R').replace('R', '.')} pF)`;
  const noughts = Number(code.slice(2));
  if (noughts === 0) return ` (${code.slice(0, 2)} pF) or just ${code.slice(0, 2)}`;
  return ` (${code.slice(0, 2)} with ${noughts} nought${noughts === 1 ? '' : 's'}, in picofarads)`;
}

function can(part: Described, farads: number | null): PartLook {
  const volts = ratingOf(part, 'voltage');
  const print = [
    ...(farads === null ? [] : [formatQuantity('capacitance', farads)]),
    ...(volts === null ? [] : [formatQuantity('voltage', volts.si)]),
  ];
  const printed = print.length === 0 ? [] : [sure(`Printed on its side: ${print.join(' and ')}.`)];
  if (says(part, 'bipolar|non[- ]?polari?[sz]?e?d?')) return formed('can', [...printed, eitherWay], ...print);
  if (says(part, 'smd|smt')) {
    return formed('can', [...printed, usual('A dark segment on its top marks the minus side.')], ...print);
  }
  const signs = [
    usual('A stripe down its side marks the minus lead.'),
    usual('The longer lead is plus, as long as none is cut.'),
  ];
  return formed('can', [...printed, ...signs], ...print);
}

function tantalum(part: Described, farads: number | null): PartLook {
  if (chipSizeOf(part) !== null || says(part, 'smd|smt|chip|[abcde] case|case [abcde]')) {
    return formed('barred-chip', [
      usual('A bar across one end marks plus: here a bar is not minus, as it is on a can.'),
    ]);
  }
  const value =
    farads === null ? [] : [usual(`Often printed with its microfarads and its volts: ${inFull(part, farads)}.`)];
  return formed('bead', [...value, usual('A plus sign or a bar marks the plus lead, which is also the longer one.')]);
}

function inFull(part: Described, farads: number): string {
  const volts = ratingOf(part, 'voltage');
  const value = formatQuantity('capacitance', farads);
  return volts === null ? value : `${value}, ${formatQuantity('voltage', volts.si)}`;
}
