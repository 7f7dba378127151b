import type { Drawing, LookSign, PartLook } from '../guide.ts';
import { type Described, pinsOf, says } from './described.ts';
import { formed, sure } from './signs.ts';

/** Headers, sockets, terminals and jacks, by their positions and pitch. */
export function lookOfConnector(part: Described): PartLook | null {
  const pins = pinsOf(part);
  if (says(part, 'ic|dip|dil|chip') && says(part, 'socket|holder') && pins !== null && pins % 2 === 0 && pins <= 64) {
    const notch = sure('It has a notch at one end, as its chip has: the two go over each other.');
    return { drawing: { kind: 'dual', pins, feet: 'openings' }, signs: [notch] };
  }
  if (says(part, 'barrel|dc[- ](?:power[- ])?jack|dc[- ]socket')) return formed('round-jack', barrelSigns(part));
  if (says(part, 'audio|headphone|phone jack|3[.,]5 ?mm jack|6[.,]3\\d? ?mm jack')) return formed('round-jack');
  const grid = gridOf(part);
  if (says(part, 'screw terminal|terminal block|terminal')) {
    const positions = grid === null ? null : grid.rows * grid.columns;
    return positions === null || positions > 24
      ? null
      : { drawing: { kind: 'terminals', positions }, signs: pitchSign(part, positions) };
  }
  if (!says(part, 'header|pin strip|socket strip|socket|pin row') || grid === null) return null;
  if (says(part, 'usb|rj-?\\d+|sd|sim|jst|crimp|shroud|box header|idc')) return null;
  const openings = says(part, 'female|socket|receptacle|openings');
  const drawing: Drawing = { kind: 'strip', ...grid, openings };
  return { drawing, signs: stripSigns(part, grid, openings) };
}

/** Plugs of 2.1 mm and 2.5 mm centre differ by what the eye can hardly tell. */
function barrelSigns(part: Described): LookSign[] {
  const centre = /(?<!\d)2[.,](?:1|5)(?= ?mm|\b)/u.exec(part.text)?.[0]?.replace(',', '.');
  if (centre === undefined) return [];
  const other = centre === '2.1' ? '2.5' : '2.1';
  return [
    sure(`Its centre pin is ${centre} mm thick; one of ${other} mm looks the same, and the plug will not fit well.`),
  ];
}

/** Rows and positions: `2 × 20`, '1x15', '40-pin'. */
function gridOf(part: Described): { rows: number; columns: number } | null {
  const [, rows = 0, columns = 0] = (
    /(?<![\d.,])([12])\s?[x×*]\s?(\d{1,2})(?![\d.,]|\s?mm)/iu.exec(part.text) ?? []
  ).map(Number);
  if (rows > 0 && columns > 0) return { rows, columns };
  const pins = pinsOf(part);
  if (pins === null || pins > 80) return null;
  return says(part, 'double[- ]row|two[- ]row|2[- ]row') && pins % 2 === 0
    ? { rows: 2, columns: pins / 2 }
    : { rows: 1, columns: pins };
}

/** In hundredths of a millimetre; pitches that connectors are made with. */
function pitchOf({ text }: Described): number | null {
  const pitches = [100, 125, 127, 150, 200, 250, 254, 350, 381, 396, 500, 508, 750, 762, 1000, 1016];
  const found = [...text.matchAll(/(?<![\d.,])(\d{1,2}(?:[.,]\d{1,2})?) ?mm\b/giu)].map((match) =>
    Math.round(Number(match[1]?.replace(',', '.')) * 100),
  );
  return found.find((hundredths) => pitches.includes(hundredths)) ?? null;
}

function stripSigns(part: Described, grid: { rows: number; columns: number }, openings: boolean): LookSign[] {
  const what = openings ? 'opening' : 'pin';
  const rows = grid.rows === 1 ? 'One row' : 'Two rows';
  const counted = `${rows} of ${grid.columns} ${what}${grid.columns === 1 ? '' : 's'}`;
  return [sure(`${counted}${apart(part)}${lengthOf(part, grid.columns)}.`)];
}

function pitchSign(part: Described, positions: number): LookSign[] {
  return [sure(`${positions} screw${positions === 1 ? '' : 's'} in a row${apart(part)}.`)];
}

function apart(part: Described): string {
  const pitch = pitchOf(part);
  return pitch === null ? '' : `, ${pitch / 100} mm apart`;
}

/** Strips are about as long as their positions. */
function lengthOf(part: Described, columns: number): string {
  const pitch = pitchOf(part);
  return pitch === null || columns < 3 ? '' : `, about ${Math.round((pitch * columns) / 100)} mm long`;
}
