import { smdResistorCodeOf, valueBandsOf } from '#notation/codes.ts';
import type { PartLook } from '../guide.ts';
import { chipSizeOf, type Described, measureOf, says, sizeOf } from './described.ts';
import { formed, sure, typePrint, unseen, usual } from './signs.ts';

/** Coils count in microhenries, with the digits and powers of ten of resistors (common practice). */
export function lookOfInductor(part: Described): PartLook | null {
  const henries = measureOf(part, 'inductance');
  const micro = henries === null ? null : Number((henries * 1e6).toPrecision(6));
  if (says(part, 'ferrite|bead')) return null;
  if (says(part, 'axial|moulded|molded')) {
    const bands = micro === null ? null : valueBandsOf(micro, 2);
    return formed(
      'axial-coil',
      bands === null ? [] : [usual(`Often banded in microhenries: ${bands.join(', ')}, then its tolerance.`)],
    );
  }
  if (says(part, 'toroid\\w*|ring core')) return formed('ring-coil', [sure('Wire wound round a ring.')]);
  const code = micro === null ? null : smdResistorCodeOf(micro, 3);
  return code === null ? null : unseen(usual(`Often printed ${code}, in microhenries.`));
}

/** Letters on the caps of glass fuses: IEC 60127-2, from memory. */
export function lookOfFuse(part: Described): PartLook | null {
  if (says(part, 'resettable|ptc|polyfuse|polyswitch')) {
    if (chipSizeOf(part) !== null || says(part, 'smd|smt')) return formed('chip', typePrint(part.type));
    const body = usual('A thin flat body with two leads, easily taken for a capacitor; either way round is right.');
    return formed('disc', [...typePrint(part.type), body]);
  }
  if (says(part, 'blade|automotive')) return formed('blade-fuse', [sure('Its amperes stand on its back.')]);
  if (says(part, 'glass|5 ?[x×] ?20|6[.,]3 ?[x×] ?3\\d|cartridge')) {
    const words = 'Stamped on a metal cap: its amperes and volts, after F (fast) or T (slow).';
    return formed('glass-fuse', [sure(words)]);
  }
  return null;
}

export function lookOfCrystal(part: Described): PartLook | null {
  const hertz = measureOf(part, 'frequency');
  if (hertz === null) return null;
  if (hertz < 1e6) return unseen(usual('A metal cylinder with two thin legs, mostly without a print.'));
  const megahertz = (hertz / 1e6).toFixed(3);
  return formed('crystal', [usual(`Often printed ${megahertz}, its megahertz. Either way round is right.`)], megahertz);
}

export function lookOfSwitch(part: Described): PartLook | null {
  if (says(part, 'encoder')) return formed('encoder');
  if (says(part, 'toggle')) return formed('toggle');
  if (says(part, 'slide')) return formed('slide');
  if (says(part, 'tact|tactile|micro ?switch|6 ?(?:mm)? ?[x×] ?6')) {
    return formed('tact', [sure('Its four legs are joined in two pairs inside: a continuity test finds them.')]);
  }
  return null;
}

/** Sizes of cells are their names in IEC 60086 and IEC 61960: `CR2032` is 20 mm across and 3.2 mm thick. */
export function lookOfBattery(part: Described): PartLook | null {
  if (says(part, 'holder|box|clip|connector|charger')) return null;
  const coin = /\b[CBLS]R(\d{2})(\d{2})\b/u.exec(part.text);
  if (coin !== null) {
    const [across, thick] = [Number(coin[1]), Number(coin[2]) / 10];
    const words = `${across} mm across and ${thick.toFixed(1)} mm thick. The broad face with the print is plus.`;
    return formed('coin-cell', [sure(words)]);
  }
  const round = /(?<![\d.])(\d{2})(\d{2})0(?![\d.]| ?m?Ah)/u.exec(part.text);
  const isLithium = says(part, 'li-?ion|lithium|cell|batter(?:y|ie)|accumulator');
  if (round !== null && isLithium && Number(round[2]) >= 30) {
    // What protects a cell makes it longer than its name says.
    const open = sizeOf(part) === null && !says(part, 'protected');
    const size = open ? [sure(`${Number(round[1])} mm thick and ${Number(round[2])} mm long.`)] : [];
    return formed('round-cell', [...size, sure('The end with the button is plus.')]);
  }
  if (says(part, 'aaa?|mignon|micro cell|lr0?[36]'))
    return formed('round-cell', [sure('The end with the button is plus.')]);
  if (says(part, '9 ?v(?:olt)? (?:block|alkaline|batter(?:y|ie))|6lr61|6f22|pp3'))
    return formed('snap-battery', [sure('The smaller of its two snaps is plus.')]);
  if (says(part, 'li-?po|lipo|pouch|lithium[- ]polymer')) {
    const words = 'Red is plus and black minus, but small plugs come wired either way: measure before you plug it in.';
    return formed('pouch', [usual(words)]);
  }
  return null;
}

/** Length of a screw: under the head, of a countersunk one over all (ISO 225 and the product standards, from memory). */
export function lookOfScrew(part: Described): PartLook | null {
  const found = /(?<![\d.,])(?:M ?)?\d{1,2}(?:[.,]\d)? ?(?:mm)? ?[x×*] ?(\d{1,3}(?:[.,]\d)?)(?: ?mm\b|\b)/iu.exec(
    part.text,
  );
  const length = found?.[1]?.replace(',', '.');
  if (length === undefined) return says(part, sunk) ? null : formed('screw');
  if (says(part, sunk)) return unseen(sure(`Its ${length} mm are measured over all, head included.`));
  const words = `Its ${length} mm are measured from under the head.`;
  return formed('screw', [says(part, 'pan|button|cap|cheese|hex|round|socket') ? sure(words) : usual(words)]);
}

const sunk = 'countersunk|flat[- ]head|csk';

/** A module or a bare board: its outline where its size is told, its rows of pins where they are. */
export function lookOfPlate(part: Described, holes: boolean): PartLook | null {
  const size = sizeOf(part);
  const [, rows = 0, columns = 0] = (
    /(?<![\d.,])([12])\s?[x×*]\s?(\d{1,2}) (?:pins?|header|holes?|pads?)/iu.exec(part.text) ?? []
  ).map(Number);
  const pins = rows > 0 && columns > 0 ? { rows, columns } : null;
  if (size === null && pins === null) return null;
  return { drawing: { kind: 'plate', size, pins, holes }, signs: [] };
}

/** A ring of lights or a plate in the form of one, by its diameters. */
export function lookOfRing(part: Described): PartLook | null {
  const outside = lengthBeside(part, 'outside|outer|od');
  const inside = lengthBeside(part, 'inside|inner|id');
  if (outside === null || inside === null || inside >= outside || !says(part, 'ring|annular')) return null;
  return { drawing: { kind: 'ring', outside, inside }, signs: [] };
}

function lengthBeside({ text }: Described, side: string): number | null {
  const found =
    new RegExp(`(\\d{1,4}(?:[.,]\\d+)?) ?mm (?:${side})\\b`, 'iu').exec(text) ??
    new RegExp(`\\b(?:${side})(?: diameter)? (\\d{1,4}(?:[.,]\\d+)?) ?mm\\b`, 'iu').exec(text);
  return found === null ? null : Number(found[1]?.replace(',', '.'));
}
