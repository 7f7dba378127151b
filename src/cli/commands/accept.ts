import { type Accepting, acceptFindings, takeBackAcceptances } from '#app/accept.ts';
import { acceptDocument } from '#app/documents/acceptDocument.ts';
import { stockReasons } from '#checks/acceptance.ts';
import { readArguments, UsageMistake } from '../arguments.ts';
import { safe, wrapped } from '../print/layout.ts';
import { printHead } from '../print/printJudgement.ts';
import { printJson, withWorld } from '../withWorld.ts';
import { audienceOf, statusOf } from './audience.ts';
import { type Command, jsonOption } from './command.ts';

export const acceptCommand: Command = {
  name: 'accept',
  usage: 'DIR FINDING… [--because REASON] [--take-back] [--for builder|publisher] [--json]',
  title: 'live with a finding, and say why',
  about: `Notes in twicebuilt.yaml that findings are to stay quiet. A finding is named by its number in the list of
\`check\`, or by its name. It speaks again when one of its places says something else.
A check that is refused twice with no-fault weighs less from then on.`,
  options: [
    {
      flag: '--because REASON',
      meaning: `${Object.keys(stockReasons).join(', ')}, or words of your own (unless said otherwise: known)`,
    },
    { flag: '--take-back', meaning: 'the findings named are to speak again' },
    { flag: '--for WHO', meaning: 'builder or publisher, as given to `check` when you read the number' },
    jsonOption,
  ],
  examples: ['accept . 3 --because meant', 'accept . value-differs:part:R4 --because "both values work"'],
  async run(words) {
    const { values, positionals } = readArguments(words, {
      because: { type: 'string' },
      'take-back': { type: 'boolean' },
      for: { type: 'string' },
      json: { type: 'boolean' },
    });
    const [place, ...which] = positionals;
    if (place === undefined || which.length === 0) {
      throw new UsageMistake('Expected a folder and at least one finding, by number or name.');
    }
    const audience = audienceOf(values.for);
    const accepting = await withWorld(async (world) => {
      const folder = await world.openFolder(place);
      return values['take-back']
        ? takeBackAcceptances(folder, world, which, { for: audience })
        : acceptFindings(folder, world, which, { reason: values.because ?? 'known', for: audience });
    });
    if (values.json) printJson(acceptDocument(accepting));
    else process.stdout.write(printAccepting(accepting));
    return statusOf(accepting.judgement.verdict);
  },
};

function printAccepting({ accepted, takenBack, judgement }: Accepting): string {
  const lines = [
    ...accepted.map(({ finding, reason }) =>
      wrapped(`Accepted: ${safe(finding.message)} Because: ${safe(reason)}`, ''),
    ),
    ...accepted.map(({ finding }) => `To take it back: twicebuilt accept DIR --take-back ${finding.id}`),
    ...takenBack.map((name) => `Speaks again: ${safe(name)}`),
    '',
    printHead(judgement).trimEnd(),
  ];
  return `${lines.join('\n')}\n`;
}
