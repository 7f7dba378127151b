import { placeInside } from '#prose/placeInside.ts';
import { defineCheck } from '../defineCheck.ts';
import { sentencesOfSection, stepSentences } from '../stepSentences.ts';

export const secondLeftOut = defineCheck({
  id: 'second-left-out',
  title: 'Where a step fits the first of several, it fits the others too.',
  weight: 'slows',
  audience: 'builder',
  words: 'English',
  why: 'The maker’s hands went on to the second one; the sentence did not.',
  basis: 'common practice: an enumeration that was begun is carried to its end',
  needs: { subject: ['steps'], witnesses: [] },
  *run({ build }) {
    const steps = build.instructions.sections.filter(({ role }) => role === 'step');
    const all = stepSentences(build);
    for (const [index, { section, text, place }] of all.entries()) {
      const match = first.exec(text);
      const thing = match?.[1];
      if (match === null || thing === undefined) continue;
      const next = steps[steps.indexOf(section) + 1];
      const rest = [
        text.slice(match.index + match[0].length),
        ...all.slice(index + 1).flatMap((sentence) => (sentence.section === section ? [sentence.text] : [])),
        ...(next === undefined ? [] : [next.heading, ...sentencesOfSection(next).map((sentence) => sentence.text)]),
      ].join(' ');
      if (goesOn.test(rest)) continue;
      yield {
        subjects: [`step:${section.id}`],
        mark: `first-${thing.toLowerCase()}`,
        sides: [placeInside(place, match.index, match.index + match[0].length)],
        basis: 'read',
        message: `The step tells of ‘the first ${thing}’, and never comes to the next one.`,
        consequence: 'A builder does not know where the others go, or when.',
        remedy: `Say where and when the other ${thing}s follow.`,
      };
    }
  },
  examples: {
    passes: [
      {
        title: 'the second follows, or the rest, here or in the next step',
        files: {
          'guide.md':
            '# Night light\n\n## Fit the screws\n\nFasten the first screw at the hinge. Fasten the second one opposite.\n\n## Fit the pins\n\nSolder the first pin, then the rest.\n\n## Fit one cable\n\nPlug the first cable into X1.\n\n## Fit another\n\nPlug the next cable into X2.\n',
        },
      },
      {
        title: 'a first that is only spoken of',
        files: {
          'guide.md': '# Night light\n\n## Try it\n\nThe first LED glows.\n\n## Close it\n\nPress the lid on.\n',
        },
      },
    ],
    fails: [
      {
        title: 'one screw of two',
        files: {
          'guide.md':
            '# Night light\n\n## Close it\n\nTake two screws. Fasten the first screw at the hinge. See that both are tight. The other side is held by a peg.\n\n## Use it\n\nPlug it in.\n',
        },
        expect: [{ file: 'guide.md', line: 5, words: 'the first screw' }],
      },
      {
        title: 'one cable of two',
        files: {
          'guide.md':
            '# Night light\n\n## Join the lamps\n\nPush the first cable into the socket of the board.\n\n## Use it\n\nPress the button.\n',
        },
        expect: [{ file: 'guide.md', line: 5, words: 'the first cable' }],
      },
    ],
  },
});

const first =
  /\b(?:fit|fasten|screw|tighten|solder|insert|place|push|press|drive|attach|glue|mount|connect|plug|install|lay|put|crimp)\b[^.:]*?\bthe first (screw|bolt|nut|standoff|cable|wire|lead|switch|button|LED|resistor|capacitor|diode|clip|pin|magnet|insert|motor|servo|sensor|panel|module|strip|leg|bracket|bearing)\b/iu;
const goesOn =
  /\b(?:second|third|fourth|remaining|rest|another|last|repeat\w*|likewise|each|every|one by one|in turn)\b|\b(?:next|others?)\b(?! (?:side|end|hand|way|direction|step|face|half|page|section))/iu;
