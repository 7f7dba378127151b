import { type Asked, notTold } from '../askedOf.ts';
import { defineCheck } from '../defineCheck.ts';
import { hazardsThatBite } from '../hazardsThatBite.ts';
import { listed } from '../say.ts';

export const mainsNotDescribed = defineCheck({
  id: 'mains-not-described',
  title: 'A build with mains in it tells of isolation, fuse, earth, case, and who may do the work.',
  weight: 'slows',
  audience: 'builder',
  firm: true,
  words: 'English',
  why: 'Each of the five is what stands between a fault and a death; none can be guessed from a wiring table.',
  basis: 'IEC 61140 and IEC 60364-4-41 for protection against shock; who may work on mains is for local law to say',
  needs: { subject: ['steps'], witnesses: [] },
  *run({ build, facts }) {
    const found = hazardsThatBite(build, facts.hazards).find(({ hazard }) => hazard === 'mains');
    if (found === undefined) return;
    const lacking = notTold(asked, build.parts, build).map(({ what }) => what);
    if (lacking.length === 0) return;
    yield {
      subjects: ['build:mains'],
      mark: 'described',
      sides: found.places.slice(0, 3),
      basis: found.basis,
      message: `The build has mains voltage in it (${found.why}); neither the parts list nor the guide tells of ${listed(lacking, 5)}.`,
      consequence: 'A builder may leave out what keeps a fault from killing somebody.',
      remedy: `Tell of ${listed(lacking, 5)}, and have the whole checked by a person whom local law lets do such work.`,
    };
  },
  examples: {
    passes: [
      {
        title: 'all five are told',
        files: {
          'guide.md':
            '# Lamp switch\n\n## Wire the inlet\n\n- Parts: J1\n- Danger: Mains kills. Have a licensed person do this step.\n\nScrew J1 into the closed metal case, insulate every terminal and join the case to earth.\n',
          'parts.csv':
            'Reference,Quantity,Description\nJ1,1,"Mains inlet, IEC C14, with fuse holder"\nF1,1,"Fuse, 1 A, 250 V"\n',
        },
      },
      {
        title: 'a bought adapter brings no mains work',
        files: {
          'guide.md': '# Lamp\n\n## Plug it in\n\n- Parts: PS1\n- Power: off → on\n\nPlug PS1 in.\n',
          'parts.csv': 'Reference,Quantity,Description\nPS1,1,"Plug-in mains adapter, 5 V 2 A"\n',
        },
      },
    ],
    fails: [
      {
        title: 'no fuse, no earth, nobody competent',
        files: {
          'guide.md':
            '# Lamp switch\n\n## Wire the inlet\n\n- Parts: J1\n- Danger: Mains kills. Unplug it first.\n\nScrew J1 into the case and insulate every terminal.\n',
          'parts.csv': 'Reference,Quantity,Description\nJ1,1,"Mains inlet, IEC C14"\n',
        },
        expect: [{ file: 'guide.md', line: 5, words: 'a fuse' }],
      },
      {
        title: 'an inlet and nothing more',
        files: {
          'guide.md':
            '# Lamp switch\n\n## Wire the inlet\n\n- Parts: J1\n- Danger: Mains kills. Unplug it first.\n\nScrew J1 down.\n',
          'parts.csv': 'Reference,Quantity,Description\nJ1,1,"Mains inlet, IEC C14"\n',
        },
        expect: [{ file: 'guide.md', line: 5, words: 'a closed case' }],
      },
    ],
  },
});

const asked: readonly Asked[] = [
  { what: 'isolation of what can be touched', words: /\b(?:isolat\w*|insulat\w*|creepage|galvanic\w*)\b/i },
  { what: 'a fuse', words: /\b(?:fuses?|fused|circuit breaker)\b/i },
  {
    what: 'earth, or double insulation',
    words: /\b(?:earth\w*|protective ground\w*|PE|class II|double[- ]insulated)\b/,
  },
  { what: 'a closed case', words: /\b(?:case|enclosure|box|housing|cabinet)\b/i },
  { what: 'who may do the work', words: /\b(?:licen[sc]ed|qualified|competent|electrician)\b/i },
];
