import type { Judged } from '#core/assembled.ts';
import type { Basis, Claim } from '#core/claim.ts';
import type { Edit } from '#core/edit.ts';
import type { ValueMention } from '#core/facts.ts';
import type { Part, Ref } from '#core/part.ts';
import type { Place } from '#core/place.ts';
import type { Quantity } from '#core/quantity.ts';
import { findQuantities, formatQuantity, sameQuantity } from '#notation/value.ts';
import { defineCheck, type FindingDraft } from '../defineCheck.ts';
import { filesPlaying } from '../filesPlaying.ts';

export const valueDiffers = defineCheck({
  id: 'value-differs',
  title: 'A part has one value, wherever it is written.',
  weight: 'halts',
  audience: 'builder',
  why: 'A value that was changed in one file and not in the other is the mistake that replications report most.',
  basis: 'IEC 60062 for how values are written; common practice to compare them reference by reference',
  grave: true,
  needs: { subject: ['values in the parts list'], witnesses: [] },
  *run(judged) {
    for (const part of judged.build.parts) yield* withinTheRow(part);
    yield* betweenRows(judged);
    yield* elsewhere(judged);
  },
  examples: {
    passes: [
      {
        title: 'one value, written three ways',
        files: {
          'guide.md': '# Night light\n\n## Fit the resistors\n\n- Parts: R1\n\nR1 (4.7 kΩ) goes beside the chip.\n',
          'parts.csv': 'Reference,Quantity,Value,Description\nR1,1,4k7,Resistor 4700 ohm\nC1,1,100n,Capacitor 0.1 µF\n',
          'wiring.csv': 'from,to,net,note\nR1.1,C1.1,RC,R1 is 4K7\n',
        },
      },
      {
        title: 'two boards with references of their own',
        files: {
          'guide.md': '# Night light\n\n## Fit the resistors\n\nSolder them.\n',
          'lamp-parts.csv': 'Reference,Quantity,Value,Description\nR1,1,330 Ω,Resistor\nR2,1,1k,Resistor\n',
          'button-parts.csv': 'Reference,Quantity,Value,Description\nR1,1,10k,Resistor\nR2,1,22k,Resistor\n',
        },
      },
      {
        title: 'the log tells what was tried; a potentiometer is described by its range',
        files: {
          'guide.md': '# Night light\n\n## Fit the resistors\n\n- Parts: R1, R2\n\nSolder R1 (330 Ω) first.\n',
          'parts.csv':
            'Reference,Quantity,Value,Description\nR1,1,330 Ω,Resistor\nR2,1,10k,Potentiometer (4.7 kΩ to 22 kΩ will do)\n',
          'log.md': '# Log\n\n## 2026-03-01\n\nTried R1 = 220 Ω. Too bright.\n',
        },
      },
      {
        title: 'bands and printed codes that mean the value of the list, and wires of the same colours',
        files: {
          'guide.md':
            '# Night light\n\n## Fit the parts\n\n- Parts: R1–R5, C1–C3\n\nRead the bands of R1 and R2: brown, black, orange, gold. R3 is gold, brown, orange, orange, seen from the right. R4 has the bands red, red, black, black, brown (220 Ω). Push C1 and C2, both printed 103, in beside R5 (yellow-violet-red-gold). C3, marked 220, comes last. The wires of R5 are red, black and yellow.\n',
          'parts.csv':
            'Reference,Quantity,Value,Description\n"R1, R2",2,10k,Resistor\nR3,1,330 Ω,Resistor\nR4,1,220 Ω,Resistor\nR5,1,4.7 kΩ,Resistor\n"C1, C2",2,10 nF,Capacitor\nC3,1,220 µF,Electrolytic capacitor\n',
        },
      },
      {
        title: 'a better rating than asked for, and the voltage across a part, are no other value',
        files: {
          'guide.md':
            '# Night light\n\n## Fit the capacitor\n\n- Parts: C1\n\nC1 (100 µF, at least 16 V) charges to 5 V.\n',
          'parts.csv': 'Reference,Quantity,Value,Rating,Description\nC1,1,100 µF,50 V,Electrolytic capacitor\n',
        },
      },
    ],
    fails: [
      {
        title: 'the list says 330, the text 470',
        files: {
          'guide.md': '# Night light\n\n## Fit the resistor\n\n- Parts: R1\n\nSolder R1 (470 Ω) beside the lamp.\n',
          'parts.csv': 'Reference,Quantity,Value,Description\nR1,1,330 Ω,Resistor\n',
        },
        expect: [
          { file: 'guide.md', line: 7, words: '470' },
          { file: 'parts.csv', line: 2, words: '330' },
        ],
      },
      {
        title: 'list and wiring agree, the text has been left behind',
        files: {
          'guide.md': '# Night light\n\n## Fit the resistor\n\n- Parts: R1\n\nSolder R1 (470 Ω) beside the lamp.\n',
          'parts.csv': 'Reference,Quantity,Value,Description\nR1,1,330 Ω,Resistor\nD1,1,,White LED 5 mm\n',
          'wiring.csv': 'from,to,net,note\nR1.1,D1.A,LAMP,R1 is 330 Ω\n',
        },
        expect: [{ file: 'guide.md', line: 7, words: '470' }],
      },
      {
        title: 'bands of two resistors, and bands with another value beside them',
        files: {
          'guide.md':
            '# Night light\n\n## Fit the resistors\n\n- Parts: R1–R3\n\nRead the bands of R1 and R2: brown, black, red, gold. R3 is orange, orange, brown, gold, which is 470 Ω.\n',
          'parts.csv': 'Reference,Quantity,Value,Description\n"R1, R2",2,10k,Resistor\nR3,1,330 Ω,Resistor\n',
        },
        expect: [
          { file: 'guide.md', line: 7, words: '1 kΩ' },
          { file: 'guide.md', line: 7, words: '470 Ω' },
          { file: 'parts.csv', line: 2, words: 'R2' },
        ],
      },
      {
        title: 'a code printed on two capacitors, and one on a chip resistor',
        files: {
          'guide.md':
            '# Night light\n\n## Fit the capacitors\n\n- Parts: C1, C2, R1\n\nC1 and C2, both printed 104, go beside R1, marked 102.\n',
          'parts.csv': 'Reference,Quantity,Value,Description\n"C1, C2",2,10 nF,Capacitor\nR1,1,10k,Chip resistor\n',
        },
        expect: [
          { file: 'guide.md', line: 7, words: '100 nF' },
          { file: 'guide.md', line: 7, words: '1 kΩ' },
        ],
      },
      {
        title: 'one reference in two rows',
        files: {
          'guide.md': '# Night light\n\n## Fit the resistors\n\nSolder them.\n',
          'parts.csv': 'Reference,Quantity,Value,Description\n"R1, R2",2,330 Ω,Resistor\n"R2, R3",2,10k,Resistor\n',
        },
        expect: [{ file: 'parts.csv', line: 3, words: 'R2' }],
      },
      {
        title: 'a row that disagrees with itself',
        files: {
          'guide.md': '# Night light\n\n## Fit the capacitor\n\nSolder it.\n',
          'parts.csv': 'Reference,Quantity,Value,Description\nC1,1,10n,Ceramic capacitor 100 nF\n',
        },
        expect: [{ file: 'parts.csv', line: 2, words: '100' }],
      },
    ],
  },
});

/** Two cells of a row; or its value and what its description says in passing. */
function* withinTheRow(part: Part): Iterable<FindingDraft> {
  const [first, other] = claimsAtOdds(part);
  if (first === undefined || other === undefined) return;
  const name = part.refs[0] ?? part.description;
  yield {
    subjects: [`part:${part.id}`],
    mark: 'row',
    sides: [...first.places, ...other.places],
    basis: weakest(first, other),
    message: `The row of ${name} says ${written(first.value)} and ${written(other.value)}.`,
    consequence: 'A builder buys one of the two, and may fit the wrong one.',
    remedy: 'Correct the one that is wrong.',
  };
}

function claimsAtOdds(part: Part): Claim<Quantity>[] {
  if (part.value.is === 'unknown') return [];
  const [first, ...others] = part.value.claims;
  const other = others.find(({ value }) => !sameQuantity(value, first.value)) ?? describedValue(part, first.value);
  return other === undefined || sameQuantity(other.value, first.value) ? [] : [first, other];
}

/** What a resistor, a capacitor and a coil are named by; of a fuse or a supply a description may state other currents. */
const naming: ReadonlySet<string> = new Set(['resistance', 'capacitance', 'inductance']);

/** The one quantity of the same kind in the description; two of them may be a choice or a range. */
function describedValue({ description, cells }: Part, value: Quantity): Claim<Quantity> | undefined {
  if (!naming.has(value.kind)) return undefined;
  const found = findQuantities(description).filter(({ quantity }) => quantity.kind === value.kind);
  const [only] = found;
  if (found.length !== 1 || only === undefined || cells.description === undefined) return undefined;
  return { value: only.quantity, basis: 'read', places: [cells.description], confidence: 0.8 };
}

function* betweenRows({ build }: Judged): Iterable<FindingDraft> {
  const rows = new Map<Ref, Part[]>();
  for (const part of build.parts) for (const ref of part.refs) rows.set(ref, [...(rows.get(ref) ?? []), part]);
  for (const [ref, parts] of rows) {
    const [first, ...others] = parts.filter(({ fitted }) => fitted);
    const stated = first === undefined ? undefined : claimOf(first);
    if (first === undefined || stated === undefined) continue;
    const other = others.find((part) => {
      const claim = claimOf(part);
      // Two boards, or two tables of one file, may each begin at R1.
      if (part.place.file !== first.place.file || part.section !== first.section) return false;
      return claim !== undefined && claim.value.kind === stated.value.kind && !sameQuantity(claim.value, stated.value);
    });
    const otherClaim = other === undefined ? undefined : claimOf(other);
    if (other === undefined || otherClaim === undefined) continue;
    yield {
      subjects: [`part:${ref}`],
      mark: 'rows',
      sides: [first.cells.value ?? first.place, other.cells.value ?? other.place],
      message: `${ref} stands in two rows: ${written(stated.value)} in ${where(first.place)}, ${written(otherClaim.value)} in ${where(other.place)}.`,
      consequence: 'A builder buys both and may fit the wrong one.',
      remedy: `Take ${ref} out of the row where it does not belong.`,
    };
  }
}

/** What text and wiring say of a part, against its row. A log tells what was once, so it is no witness. */
function* elsewhere({ build, facts }: Judged): Iterable<FindingDraft> {
  const logs = filesPlaying(build, 'log');
  const mentions = facts.values.filter(({ places }) => places.every(({ file }) => !logs.has(file)));
  const reported = new Map<
    string,
    { part: Part; ref: Ref; marked: ValueMention['marked']; claims: Claim<Quantity>[] }
  >();
  for (const mention of mentions) {
    const { ref, value, marked } = mention.value;
    const part = build.parts.find(({ id }) => id === mention.value.part);
    const stated = part === undefined ? undefined : claimOf(part);
    if (part === undefined || stated === undefined || part.value.is === 'contradicted') continue;
    if (stated.value.kind !== value.kind || sameQuantity(stated.value, value)) continue;
    const key = `${ref} ${marked} ${formatQuantity(value.kind, value.si)}`;
    const entry = reported.get(key) ?? { part, ref, marked, claims: [] };
    entry.claims.push({ ...mention, value });
    reported.set(key, entry);
  }
  for (const { part, ref, marked, claims } of reported.values()) {
    const stated = claimOf(part);
    const first = claims[0];
    if (stated === undefined || first === undefined) continue;
    const agreeing = mentions.filter(({ value }) => value.part === part.id && sameQuantity(value.value, stated.value));
    const listOwns = part.value.is === 'confirmed' && part.value.claims.length + agreeing.length > claims.length;
    const places = claims.flatMap((claim) => claim.places);
    yield {
      subjects: [`part:${ref}`],
      mark: `${marked ?? ''}${formatQuantity(first.value.kind, first.value.si).replace(/\s/g, '')}`,
      sides: [...places, ...(stated.places.length > 0 ? stated.places : [part.cells.value ?? part.place])],
      basis: weakest(...claims, stated),
      message: `${ref} is ${saidOf(first.value, marked)} in ${where(places[0])}, and ${written(stated.value)} in ${where(part.place)}.`,
      consequence: 'A builder fits one of the two; the circuit was built with only one of them.',
      remedy: `Write ${remedyFor(stated.value, marked)} here if the parts list is right, else correct the list.`,
      mend: listOwns && marked === null ? replacement(build, first, stated.value) : null,
    };
  }
}

/** 'orange, orange, brown, gold (330 Ω)': what the words on the part mean stands beside them. */
function saidOf(value: Quantity, marked: ValueMention['marked']): string {
  return marked === null ? written(value) : `${written(value)} (${formatQuantity(value.kind, value.si)})`;
}

function remedyFor({ kind, si }: Quantity, marked: ValueMention['marked']): string {
  const meant = formatQuantity(kind, si);
  if (marked === null) return meant;
  return marked === 'bands' ? `the bands of ${meant}` : `the code of ${meant}`;
}

/** Puts the list's value where the other stands, if those very words stand there just once. */
function replacement(build: Judged['build'], claim: Claim<Quantity>, value: Quantity): Edit | null {
  const place = claim.places[0];
  const source = place?.kind === 'text' ? build.texts.get(place.file) : undefined;
  if (place?.kind !== 'text' || source === undefined) return null;
  const words = claim.value.text;
  const at = source.text.slice(place.span[0], place.span[1]).indexOf(words);
  if (words === '' || at < 0 || place.quote.indexOf(words, at + 1) >= 0) return null;
  const start = place.span[0] + at;
  return {
    file: place.file,
    base: source.hash,
    changes: [{ span: [start, start + words.length], text: formatQuantity(value.kind, value.si) }],
    why: `${words} becomes ${formatQuantity(value.kind, value.si)}, as the parts list says`,
  };
}

function claimOf(part: Part): Claim<Quantity> | undefined {
  return part.value.is === 'unknown' ? undefined : part.value.claims[0];
}

function weakest(...claims: readonly Claim<unknown>[]): Basis {
  const order: readonly Basis[] = ['declared', 'derived', 'read', 'proposed'];
  return order[Math.max(...claims.map(({ basis }) => order.indexOf(basis)))] ?? 'declared';
}

function written(value: Quantity): string {
  return value.text.trim() === '' ? formatQuantity(value.kind, value.si) : value.text.trim();
}

function where(place: Place | undefined): string {
  if (place === undefined) return 'the text';
  return place.kind === 'text' ? `${place.file}, line ${place.line}` : place.file;
}
